/** Builds the tool once before all tests, so that they can start real processes and real threads. */
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildEntry } from '../../src/cli/build.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Folder of the built tool; what the compiler said instead when the sources do not build. */
    build: string;
    /** The built worker's file. */
    workerFile: string;
  }
}

/** Tests that need no build still run while the sources do not compile; those that need one fail by the missing file. */
export default async function setup(project: TestProject): Promise<void> {
  const build = await buildEntry('main').catch((error: Error) => {
    console.error(`The tool does not build: ${error.message}`);
    return `(no build) ${error.message}`;
  });
  project.provide('build', build);
  project.provide('workerFile', join(build, 'worker.js'));
}
