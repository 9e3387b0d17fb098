import { existsSync, readFileSync, rmSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { Writable } from 'node:stream';
import { fileURLToPath } from 'node:url';
import { runTests } from '@vscode/test-electron';
import { build } from 'esbuild';
import { places } from '../harness/places.ts';
import { describeResult, type Results } from '../harness/results.ts';

/** The tests inside VS Code's extension host, with the real `vscode` module. */
export async function runHost(workshop: string, desktop: boolean, only: string | undefined): Promise<Results> {
    const tests = join(places.out, 'host.cjs');
    const report = join(places.out, 'host.json');
    rmSync(report, { force: true });
    await build({
        entryPoints: [join(places.editorTests, 'host/index.ts')],
        outfile: tests,
        bundle: true,
        platform: 'node',
        format: 'cjs',
        target: 'node22',
        sourcemap: 'inline',
        logLevel: 'warning',
        external: ['vscode', 'mocha'],
    });
    const log: string[] = [];
    const out = new Writable({
        write: (text, _encoding, done) => {
            log.push(String(text));
            if (process.env.KERFBOOK_VERBOSE) process.stdout.write(text);
            done();
        },
    });
    await runTests({
        ...(desktop ? {} : { vscodeExecutablePath: fileURLToPath(new URL('../harness/vscode-in-browser.mjs', import.meta.url)) }),
        extensionDevelopmentPath: places.root,
        extensionTestsPath: tests,
        launchArgs: [workshop],
        extensionTestsEnv: {
            PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}`,
            KERFBOOK_REPORT: report,
            KERFBOOK_ONLY: only,
        },
        stdout: out,
        stderr: out,
    }).catch(() => undefined); // a failing test; the report says which
    const results = existsSync(report) ? (JSON.parse(readFileSync(report, 'utf8')) as Results) : neverRan(log);
    for (const result of results.tests) process.stdout.write(describeResult(result));
    return results;
}

function neverRan(log: readonly string[]): Results {
    const error = `The window ended without a report.\n${log.join('')}`;
    return { tests: [{ title: 'host: VS Code runs the tests', milliseconds: 0, error }], times: [] };
}
