/**
 * Installs what a real VS Code needs, once: this folder's own packages and, on Debian as root, a
 * browser and the libraries of the server's native parts.
 *
 *     node tests/editor/install.mjs
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const DEBIAN = ['libkrb5-dev', 'libsecret-1-0', 'python3', 'make', 'g++'];
const BROWSERS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

export function browserPath() {
    return process.env.CHROMIUM ?? BROWSERS.find((path) => existsSync(path));
}

function installed() {
    // Without its postinstall the package lies there with no VS Code inside.
    const parts = ['code-server/lib/vscode/out', 'playwright-core', 'mocha', 'axe-core', '@types/mocha'];
    return parts.every((part) => existsSync(join(here, 'node_modules', part)));
}

function installDebian() {
    const needed = [...(browserPath() === undefined ? ['chromium'] : []), ...(installed() ? [] : DEBIAN)].filter(
        (name) => spawnSync('dpkg', ['-s', name]).status !== 0,
    );
    if (needed.length === 0) return;
    if (process.platform !== 'linux' || process.getuid?.() !== 0) {
        throw new Error(
            `Please install ${needed.join(', ')} (as root: apt-get install -y ${needed.join(' ')}), or set CHROMIUM to a browser.`,
        );
    }
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
    execFileSync('apt-get', ['update', '-qq'], { stdio: 'inherit', env });
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', ...needed], { stdio: 'inherit', env });
}

export function install() {
    if (browserPath() === undefined || !installed()) installDebian();
    if (installed()) return;
    process.stdout.write('Installing a VS Code for the tests under tests/editor/ (about 3 minutes, once) …\n');
    // The server's install script refuses any Node older than the one that runs this.
    const env = { ...process.env, PATH: `${dirname(process.execPath)}${delimiter}${process.env.PATH}` };
    execFileSync('npm', ['ci', '--no-audit', '--no-fund'], { cwd: here, stdio: 'inherit', env });
    if (!installed())
        throw new Error('The install went through, but there is no VS Code in tests/editor/node_modules/code-server.');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) install();
