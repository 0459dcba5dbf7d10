/** A limit on silence, for work that has none of its own. */

/**
 * Rejects when `start` has called `alive` for `seconds` no more; the work itself cannot be stopped and its end is ignored.
 * @param start begins the work and is given the function to call on each progress
 */
export function unlessStalled<T>(start: (alive: () => void) => Promise<T>, seconds: number): Promise<T> {
  return new Promise<T>((resolve, reject) => {
    const stalled = () => reject(new Error(`nothing came for ${seconds} s`));
    let timer = setTimeout(stalled, seconds * 1000);
    const alive = () => {
      clearTimeout(timer);
      timer = setTimeout(stalled, seconds * 1000);
    };
    start(alive)
      .then(resolve, reject)
      .finally(() => clearTimeout(timer));
  });
}
