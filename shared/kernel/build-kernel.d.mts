/** The text of kernel-binary.ts, compiled from shared/kernel/assembly. Throws Error when the kernel does not compile. */
export function compiledKernel(): Promise<string>;
