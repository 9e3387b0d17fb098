/**
 * Checks the types: all files together, then each room with only what the place it runs in has (.config/types/), so that a page's
 * `document` does not compile in the trade, nor Node's `Buffer` in the language.
 */
import { spawn } from 'node:child_process';
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const rooms = readdirSync(path.join(root, '.config/types')).map((file) => path.join('.config/types', file));
const compiler = path.join(root, 'node_modules/typescript/bin/tsc');

function check(project) {
    return new Promise((resolve) => {
        const run = spawn(process.execPath, [compiler, '-p', project, '--pretty', 'false'], { cwd: root });
        let said = '';
        run.stdout.on('data', (data) => {
            said += data;
        });
        run.stderr.on('data', (data) => {
            said += data;
        });
        run.on('close', (code) => resolve({ project, code, said }));
    });
}

let failed = false;
for (const project of ['tsconfig.json', ...rooms]) {
    const { code, said } = await check(project);
    if (code === 0) continue;
    failed = true;
    process.stderr.write(`${project}\n${said}\n`);
}
process.exit(failed ? 1 : 0);
