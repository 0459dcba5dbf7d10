import { readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';
import { modelVersion } from './src/cli/build.mjs';

const tool = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as { version: string };

export default defineConfig(async () => ({
  define: {
    MODEL_VERSION: JSON.stringify(await modelVersion().catch(() => 'the model does not compile')),
    TOOL_VERSION: JSON.stringify(tool.version),
  },
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/support/build.ts'],
    testTimeout: 60_000,
    maxWorkers: 2,
  },
}));
