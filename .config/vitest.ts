import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { tabletScriptModule, tabletScriptName } from './tablet-script.mjs';

/** Built-in stock is imported as text, as the build does it. */
export const kerfAsText = {
    name: 'kerf-as-text',
    enforce: 'pre' as const,
    load(id: string) {
        return id.endsWith('.kerf') ? `export default ${JSON.stringify(readFileSync(id, 'utf8'))};` : undefined;
    },
};

/** The script of the page for the tablet, as the build puts it in. */
export const tabletScriptAsText = {
    name: 'tablet-script',
    resolveId: (id: string) => (id === tabletScriptName ? `\0${id}` : undefined),
    load: async (id: string) => (id === `\0${tabletScriptName}` ? (await tabletScriptModule()).contents : undefined),
};

/** The editor is there only in the editor. */
export const resolve = { alias: { vscode: fileURLToPath(new URL('../tests/kit/vscode.ts', import.meta.url)) } };

/**
 * Each in a process of its own: files that put another module or another global in the place of a real one, change the engine that
 * they run on, or switch the polygon library over for good.
 */
const alone = [
    ...[
        'tests/extension/page*.test.ts',
        'tests/extension/newest-asker.test.ts',
        'tests/extension/current-recipe.test.ts',
        'tests/extension/assistants.test.ts',
        'tests/extension/checklist-tree.test.ts',
    ],
    'tests/extension/writing-messages.test.ts',
    ...['tests/language/short-lived.test.ts', 'tests/geometry/engine.test.ts'],
];
/**
 * Those that take longest, the longest first: one that begins last lets the other worker wait. Before them, as long as the worker is small,
 * those that start git time and again: a process that has grown takes longer to start another one.
 */
const longest = [
    ...['server/cli-diff', 'server/cli', 'server/cli-history', 'server/cli-hostile-names', 'server/compare-request'],
    ...['server/cli-check', 'art/stacks'],
    ...['server/new-recipe', 'fuzz/answers', 'server/hints-and-pins', 'sheets/machine-file'],
    ...['art/hostile', 'server/plan-what-changed', 'published/svg-icons', 'burn/drift', 'server/language-server'],
    ...['sheets/origin', 'language/broken-lines', 'language/one-typo', 'fuzz/edits', 'review/in-brief', 'server/fix-all'],
    ...['plan/tangled', 'server/protocol', 'plan/defaults', 'house/bundles', 'art/bitmap', 'piece/face'],
    ...['server/variants-everywhere', 'sheets/machine-time', 'view/paths-of', 'review/pictures', 'house/manual'],
].map((name) => `/tests/${name}.test.ts`);

/** What a run before has left of the times is not there in a fresh clone. */
class LongestFirst extends BaseSequencer {
    override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
        const rank = ({ moduleId }: TestSpecification): number => {
            const at = longest.findIndex((name) => moduleId.endsWith(name));
            return at < 0 ? longest.length : at;
        };
        return (await super.sort(files)).sort((a, b) => (a.project.name === b.project.name ? rank(a) - rank(b) : 0));
    }
}

/** Simulations, every slip and every place, the memory of a day: with `npm run long`, which `.ci/run` does too. */
const long = 'tests/**/*.long.test.ts';
/** They look at each recipe's variants too when there is time for it. */
const ofRules = ['tests/rules/*.test.ts', 'tests/texts/findings.test.ts'];
const isLong = process.env.KERFBOOK_TESTS === 'long';
const elsewhere = ['tests/editor/**', 'tests/speed/**', '**/node_modules/**', ...(isLong ? [] : [long])];

export default defineConfig({
    root: fileURLToPath(new URL('..', import.meta.url)),
    plugins: [kerfAsText, tabletScriptAsText],
    resolve,
    test: {
        globalSetup: ['.config/before-tests.mjs'],
        setupFiles: ['tests/kit/forget-opened.ts'],
        fsModuleCache: true,
        sequence: { sequencer: LongestFirst },
        // Two cores on the machines this runs on; more workers only take turns.
        maxWorkers: 2,
        // Every test makes much that lives for a moment: with the usual 16 MB a tenth of the time went into collecting it, and
        // growing to 64 MB by and by takes another twelfth.
        execArgv: ['--max-semi-space-size=64', '--min-semi-space-size=64'],
        testTimeout: 30_000,
        hookTimeout: 30_000,
        projects: [
            {
                extends: true,
                // What is imported is read once a worker, and what is remembered by content serves the next file too.
                test: {
                    name: 'together',
                    include: isLong ? [long, ...ofRules] : ['tests/**/*.test.{ts,tsx}'],
                    exclude: [...alone, ...elsewhere],
                    isolate: false,
                },
            },
            ...(isLong ? [] : [{ extends: true as const, test: { name: 'alone', include: alone, exclude: elsewhere } }]),
        ],
    },
});
