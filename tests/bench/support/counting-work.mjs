// Stands for a process that works at a word: warm, then done with as many seconds as it was asked to have threads; 0 fails.
const seconds = Number(process.argv[4]);
process.send(0);
process.once('message', () => {
  if (seconds === 0) process.exit(3);
  process.send(seconds);
});
