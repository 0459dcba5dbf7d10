// Stands for a process that works at a word: warm, then done at each word with as many seconds as it was asked to have threads; 0 fails then, less at once.
const seconds = Number(process.argv[4]);
if (seconds < 0) process.exit(4);
process.send({ processor: 0, waited: 0 });
process.on('message', () => {
  if (seconds === 0) process.exit(3);
  process.send({ processor: seconds, waited: 0.5 });
});
