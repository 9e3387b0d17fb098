import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Built-in stock is imported as text, as the build does it. */
const kerfAsText = {
    name: 'kerf-as-text',
    enforce: 'pre' as const,
    load(id: string) {
        return id.endsWith('.kerf') ? `export default ${JSON.stringify(readFileSync(id, 'utf8'))};` : undefined;
    },
};

export default defineConfig({
    root: fileURLToPath(new URL('..', import.meta.url)),
    plugins: [kerfAsText],
    test: {
        include: ['tests/**/*.test.{ts,tsx}'],
        exclude: ['tests/editor/**', 'tests/speed/**', '**/node_modules/**'],
        // Two cores on the machines this runs on; more workers only take turns.
        maxWorkers: 2,
        testTimeout: 30_000,
    },
});
