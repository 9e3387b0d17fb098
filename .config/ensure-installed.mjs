/**
 * Installs what package-lock.json names unless that has been done already. Runs before anything is
 * installed, so it uses nothing but Node itself (18 or newer).
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const stamp = path.join(root, 'node_modules', '.kerfbook-installed');
const wanted = createHash('sha256')
    .update(readFileSync(path.join(root, 'package-lock.json')))
    .update(`${process.platform} ${process.arch}`)
    .digest('hex');

if (!existsSync(stamp) || readFileSync(stamp, 'utf8') !== wanted) {
    console.log('Installing the packages of package-lock.json …');
    const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
    const run = spawnSync(npm, ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
        cwd: root,
        stdio: 'inherit',
        shell: process.platform === 'win32',
    });
    if (run.status !== 0) process.exit(run.status ?? 1);
    writeFileSync(stamp, wanted);
}
