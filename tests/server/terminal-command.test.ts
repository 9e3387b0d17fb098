import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';

const script = fileURLToPath(new URL('../../extension/terminal/kerfbook', import.meta.url));
const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));

it.skipIf(process.platform === 'win32')(
    'the command of the editor’s terminals is run by the Node that the editor names, else by the shell’s',
    () => {
        const asked = (env: Record<string, string>) =>
            spawnSync(script, ['--version'], { encoding: 'utf8', env: { PATH: process.env.PATH, ...env } });
        expect(asked({ KERFBOOK_NODE: process.execPath }).stdout).toContain(version);
        expect(asked({}).stdout).toContain(version);
        expect(asked({ KERFBOOK_NODE: '/nowhere/node' }).status).not.toBe(0);
    },
);
