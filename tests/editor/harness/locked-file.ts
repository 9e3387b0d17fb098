import { execFileSync } from 'node:child_process';
import { chmodSync } from 'node:fs';

/** Does something while a file cannot be written. Root may write what is only marked so, and needs the file system's own lock. */
export async function whileLocked(file: string, work: () => Promise<void>): Promise<void> {
    const lock = (on: boolean) => {
        if (process.getuid?.() === 0) execFileSync('chattr', [on ? '+i' : '-i', file]);
        else chmodSync(file, on ? 0o444 : 0o644);
    };
    lock(true);
    try {
        await work();
    } finally {
        lock(false);
    }
}
