/**
 * How the JavaScript engine is to treat the model's loops. Set before anything is compiled; worker threads inherit it.
 *
 * Racing on-stack replacement leaves two in five processes with a hot loop at half speed, so it is off. The functions that a
 * step of the model calls are small but many: with the usual limits some are not inlined, and each call then boxes its numbers,
 * which costs a third of the speed (see shared/kernel/README.md). Results are the same bits either way.
 */
export const V8_FLAGS = [
  '--no-use-osr',
  '--max-inlined-bytecode-size=1000',
  '--max-inlined-bytecode-size-cumulative=4000',
];
