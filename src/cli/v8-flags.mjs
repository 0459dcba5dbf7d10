/**
 * How the JavaScript engine is to treat the model's loops, and memory. Set before anything is compiled; worker threads inherit it.
 *
 * Racing on-stack replacement leaves two in five processes with a hot loop at half speed, so it is off. The functions that a
 * step of the model calls are small but many: with the usual limits some are not inlined, and each call then boxes its numbers,
 * which costs a third of the speed (see shared/kernel/README.md). With 4000 for all of a function one process in five still boxes
 * three numbers a step, by the order in which compilers happen to be done. Results are the same bits either way.
 *
 * What has outlived two collections is looked at again when it has grown by half, not by three times as it would be on a machine
 * with memory to spare: going on with 280 000 stored evaluations without notes takes 290 MB instead of 460, and no longer.
 */
export const V8_FLAGS = [
  '--no-use-osr',
  '--max-inlined-bytecode-size=1000',
  '--max-inlined-bytecode-size-cumulative=8000',
  '--heap-growing-percent=50',
];
