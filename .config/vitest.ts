import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
    root: fileURLToPath(new URL('..', import.meta.url)),
    test: {
        include: ['tests/**/*.test.ts'],
        exclude: ['tests/editor/**', 'tests/speed/**', '**/node_modules/**'],
        // Two cores on the machines this runs on; more workers only take turns.
        maxWorkers: 2,
        testTimeout: 30_000,
    },
});
