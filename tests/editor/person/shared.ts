import { strict as assert } from 'node:assert';
import { Session } from '../harness/session.ts';

/** Set up by run.ts before the tests are loaded. */
export const session = new Session(process.env.KERFBOOK_HOME!, process.env.KERFBOOK_WORKSHOP!);

export async function eventually(what: string, look: () => Promise<boolean>): Promise<void> {
    const end = Date.now() + 45_000;
    while (!(await look())) {
        if (Date.now() > end) assert.fail(`Waited in vain: ${what}`);
        await new Promise((resolve) => setTimeout(resolve, 100));
    }
}
