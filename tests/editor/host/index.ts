import { writeFileSync } from 'node:fs';
import Mocha from 'mocha';
import { runMocha } from '../harness/results.ts';

/** What happened goes into the report. */
class Silent extends Mocha.reporters.Base {
    override epilogue(): void {}
}

/** Called by VS Code inside its extension host; rejects when a test fails. */
export async function run(): Promise<void> {
    const only = process.env.KERFBOOK_ONLY;
    const mocha = new Mocha({ timeout: 60_000, retries: 1, reporter: Silent, ...(only ? { fgrep: only } : {}) });
    mocha.suite.emit('pre-require', globalThis as never, 'host', mocha);
    await import('./language.test');
    await import('./commands.test');
    await import('./features.test');
    await import('./coupon.test');
    await import('./tasks.test');
    const results = await runMocha(mocha);
    const report = process.env.KERFBOOK_REPORT;
    if (report !== undefined) writeFileSync(report, JSON.stringify(results));
    const failed = results.tests.filter(({ error }) => error !== undefined).length;
    if (failed > 0) throw new Error(`${failed} tests failed.`);
}
