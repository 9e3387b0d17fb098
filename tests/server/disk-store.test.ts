import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import * as disk from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, onTestFinished } from 'vitest';
import { type Disk, DiskStore } from '../../server/writing/disk-store';

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

function folder(): string {
    const made = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-store-')));
    onTestFinished(() => rmSync(made, { recursive: true, force: true }));
    return made;
}

function contents(top: string): Record<string, string> {
    const names = readdirSync(top, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
    return Object.fromEntries(
        names.map((entry) => {
            const file = path.join(entry.parentPath, entry.name);
            return [path.relative(top, file), readFileSync(file, 'utf8')];
        }),
    );
}

/** The disk, of which the call of this number fails. Later ones work again, as when another program has made room. */
function failing(at: number, code: string): { disk: Disk; calls: () => number } {
    let count = 0;
    const guard = <Work extends (...args: never[]) => Promise<unknown>>(work: Work): Work =>
        (async (...args: never[]) => {
            count += 1;
            if (count === at) throw Object.assign(new Error(`${code}: refused`), { code });
            return work(...args);
        }) as Work;
    const open = guard(async (...args: Parameters<typeof disk.open>) => {
        const handle = await disk.open(...args);
        const { writeFile, sync } = handle;
        // Half of it lands on the disk before there is no room.
        handle.writeFile = (async (data: Uint8Array) => {
            count += 1;
            if (count !== at) return writeFile.call(handle, data);
            await writeFile.call(handle, data.subarray(0, data.length / 2));
            throw Object.assign(new Error(`${code}: refused`), { code });
        }) as typeof writeFile;
        handle.sync = guard(() => sync.call(handle));
        return handle;
    }) as typeof disk.open;
    return {
        disk: {
            lstat: disk.lstat,
            readFile: disk.readFile,
            mkdir: guard(disk.mkdir as (...args: never[]) => Promise<string>) as typeof disk.mkdir,
            open,
            rename: guard(disk.rename),
            rm: disk.rm,
            rmdir: disk.rmdir,
            chmod: guard(disk.chmod),
        },
        calls: () => count,
    };
}

describe('files are written whole or not at all', () => {
    it('whichever call of the file system fails', async () => {
        for (let at = 1; ; at += 1) {
            const top = folder();
            mkdirSync(path.join(top, 'made'));
            const before = { 'made/a.ngc': 'old a', 'made/c.html': 'old c' };
            for (const [name, text] of Object.entries(before)) writeFileSync(path.join(top, name), text);
            const { disk: broken, calls } = failing(at, 'ENOSPC');
            const store = new DiskStore(path.join(top, 'made'), [top], broken);
            const files = new Map([
                ['a.ngc', bytes('new a'.repeat(1000))],
                ['sub/b.svg', bytes('new b')],
                ['c.html', bytes('new c')],
            ]);
            const failure = await store.replace(files).then(
                () => undefined,
                (error: Error) => error,
            );
            if (failure === undefined) {
                const whole = { 'made/a.ngc': 'new a'.repeat(1000), 'made/sub/b.svg': 'new b', 'made/c.html': 'new c' };
                expect(contents(top)).toEqual(whole);
                // Flushing a folder is a help that not every system gives.
                if (at > calls()) break;
                continue;
            }
            expect(failure.message).toMatch(
                /cannot be written: there is no space left on the disk\. Make room, then try again\.$/,
            );
            expect(contents(top)).toEqual(before);
            expect(existsSync(path.join(top, 'made', 'sub'))).toBe(false);
        }
    });

    it.each([
        ['EACCES', 'writing is not allowed there. Allow it for this folder, or choose another.'],
        ['EROFS', 'the disk can only be read. Choose a folder on another.'],
        ['ENAMETOOLONG', 'the name is too long for this disk. Shorten the name of the recipe or of the folders above.'],
        ['EBUSY', 'another program has it open. Close it there, then try again.'],
    ])('%s is put into words', async (code, words) => {
        const top = folder();
        const store = new DiskStore(path.join(top, 'made'), [top], failing(2, code).disk);
        await expect(store.replace(new Map([['a.ngc', bytes('a')]]))).rejects.toThrow(`made/a.ngc cannot be written: ${words}`);
        expect(readdirSync(top)).toEqual([]);
    });

    it.runIf(process.getuid?.() === 0 && canMount())('on a small disk that is full', async () => {
        const top = folder();
        execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=300k', 'tmpfs', top]);
        onTestFinished(() => void execFileSync('umount', [top]));
        const store = new DiskStore(path.join(top, 'made'), [top]);
        await store.replace(new Map([['setup.ngc', bytes('M2\n')]]));
        const large = new Map([
            ['setup.ngc', bytes('G1 X0\n'.repeat(20_000))],
            ['more.ngc', bytes('G1 X0\n'.repeat(50_000))],
        ]);
        await expect(store.replace(large)).rejects.toThrow(
            /made\/more\.ngc cannot be written: there is no space left on the disk/,
        );
        expect(contents(top)).toEqual({ 'made/setup.ngc': 'M2\n' });
    });

    it('any paths, any texts: what was put there is there, and nothing else', async () => {
        const name = fc.stringMatching(/^[a-zä]{1,3}$/);
        await fc.assert(
            fc.asyncProperty(fc.dictionary(name, fc.string({ unit: 'binary' }), { maxKeys: 5 }), async (files) => {
                const top = realpathSync(mkdtempSync(path.join(tmpdir(), 'kerfbook-store-')));
                try {
                    const store = new DiskStore(path.join(top, 'x'), [top]);
                    await store.replace(new Map(Object.entries(files).map(([key, text]) => [key, bytes(text)])));
                    for (const [key, text] of Object.entries(files))
                        expect(await store.look(key)).toEqual({ kind: 'file', bytes: expect.objectContaining(bytes(text)) });
                    expect(existsSync(path.join(top, 'x')) ? readdirSync(path.join(top, 'x')).length : 0).toBe(
                        Object.keys(files).length,
                    );
                } finally {
                    rmSync(top, { recursive: true });
                }
            }),
            { numRuns: 20 },
        );
    });
});

function canMount(): boolean {
    const top = mkdtempSync(path.join(tmpdir(), 'kerfbook-mount-'));
    try {
        execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=100k', 'tmpfs', top], { stdio: 'ignore' });
        execFileSync('umount', [top]);
        return true;
    } catch {
        return false;
    } finally {
        rmSync(top, { recursive: true, force: true });
    }
}

it.skipIf(process.platform === 'win32')(
    'a pipe where a file is to stand is said, and neither waited for nor replaced',
    async () => {
        const top = folder();
        execFileSync('mkfifo', [path.join(top, 'plan.json')]);
        const store = new DiskStore(top, [top]);
        const files = new Map([
            ['a.txt', bytes('a')],
            ['plan.json', bytes('{}')],
        ]);
        await expect(store.look('plan.json')).rejects.toThrow(
            /plan\.json cannot be written: a pipe or a device lies there.*Move or rename/,
        );
        await expect(store.replace(files)).rejects.toThrow(/plan\.json cannot be written: a pipe/);
        expect(readdirSync(top)).toEqual(['plan.json']);
    },
    5000,
);
