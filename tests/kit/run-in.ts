import { vi } from 'vitest';
import { run } from '../../server/cli/run';

export interface Run {
    readonly code: number;
    readonly out: string;
    readonly err: string;
}

/** A command line, run in a folder: in this process, since a new one costs a second each time. */
export async function runIn(folder: string, args: readonly string[]): Promise<Run> {
    const here = process.cwd();
    const said = { out: '', err: '' };
    const listen = (stream: NodeJS.WriteStream, to: 'out' | 'err') =>
        vi.spyOn(stream, 'write').mockImplementation((text) => {
            said[to] += String(text);
            return true;
        });
    const ears = [listen(process.stdout, 'out'), listen(process.stderr, 'err')];
    process.chdir(folder);
    try {
        return { code: await run([...args]), ...said };
    } finally {
        process.chdir(here);
        for (const ear of ears) ear.mockRestore();
    }
}
