/** The queue cannot be used: no address, no package, no answer, no permission. The message tells a person what to do. */
export class QueueError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'QueueError';
  }
}
