/**
 * Compiles shared/kernel/assembly to WebAssembly and writes it, as base64, into kernel-binary.ts: `npm run build:kernel`.
 *
 * The same compiler gives the same bytes, so that a test can compare what is committed with what the sources give.
 */
import { existsSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { dirname, isAbsolute, join } from 'node:path';
import { argv } from 'node:process';
import { fileURLToPath } from 'node:url';

const FOLDER = dirname(fileURLToPath(import.meta.url));
const LINE = 110;

/**
 * @returns {Promise<string>} the text of kernel-binary.ts
 * @throws {Error} with the compiler's messages when the kernel does not compile
 */
export async function compiledKernel() {
  const asc = await import('assemblyscript/asc');
  const { error, binary, stderr } = await compile(asc);
  if (error || !binary) throw new Error(`the kernel does not compile: ${error?.message ?? ''}\n${stderr}`);
  const text = Buffer.from(binary).toString('base64');
  const lines = [];
  for (let i = 0; i < text.length; i += LINE) lines.push(`  '${text.slice(i, i + LINE)}',`);
  return [
    '/** Made by `npm run build:kernel` from shared/kernel/assembly; do not edit. WebAssembly, base64. */',
    'export const KERNEL_BINARY = [',
    ...lines,
    "].join('');",
    '',
  ].join('\n');
}

async function compile(asc) {
  let binary = null;
  const { error, stderr } = await asc.main(
    [
      'assembly/index.ts',
      '--config',
      'none',
      '-O3',
      '--noAssert',
      '--runtime',
      'stub',
      '--importMemory',
      '--enable',
      'simd',
      '--outFile',
      'kernel.wasm',
    ],
    {
      readFile: (name, base) => {
        const file = isAbsolute(name) ? name : join(base === '.' ? FOLDER : join(FOLDER, base), name);
        return existsSync(file) ? readFileSync(file, 'utf8') : null;
      },
      writeFile: (name, contents) => {
        if (name.endsWith('.wasm')) binary = contents;
      },
    },
  );
  return { error, binary, stderr: stderr.toString() };
}

if (argv[1] === fileURLToPath(import.meta.url)) {
  const text = await compiledKernel();
  await writeFile(join(FOLDER, 'kernel-binary.ts'), text);
  process.stdout.write(`kernel-binary.ts: ${text.length} characters\n`);
}
