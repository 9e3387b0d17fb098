import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { makeWhatIsStale } from './generated.mjs';

/**
 * Before any test: a fresh clone has no parser yet, and bundles may be older than the sources. What tests lay down for a while lies in one
 * folder that goes with the last of them: workers are ended from outside, and what they would clear away at their end stayed for good.
 */
export default async function beforeTests() {
    await makeWhatIsStale({ bundles: process.env.KERFBOOK_BUNDLES !== 'no' });
    const before = process.env.TMPDIR;
    const folder = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-tests-')));
    process.env.TMPDIR = folder;
    return () => {
        if (before === undefined) delete process.env.TMPDIR;
        else process.env.TMPDIR = before;
        rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
    };
}
