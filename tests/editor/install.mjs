/**
 * Installs what a real VS Code needs, once: this folder's own packages and, on Debian as root, a
 * browser and the libraries of the server's native parts.
 *
 *     node tests/editor/install.mjs
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const DEBIAN = ['libkrb5-dev', 'libsecret-1-0', 'python3', 'make', 'g++'];
const BROWSERS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

export function browserPath() {
    return process.env.CHROMIUM ?? BROWSERS.find((path) => existsSync(path));
}

function installed() {
    const { devDependencies } = JSON.parse(readFileSync(join(here, 'package.json'), 'utf8'));
    // Without its postinstall the package lies there with no VS Code inside. The list of all is what npm writes last.
    const parts = [...Object.keys(devDependencies), 'code-server/lib/vscode/out', '.package-lock.json'];
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
    process.stdout.write(`Installing ${needed.join(', ')} …\n`);
    runQuietly('apt-get', ['update', '-qq']);
    runQuietly('apt-get', ['install', '-y', '-qq', '--no-install-recommends', '-o', 'Dpkg::Use-Pty=0', ...needed]);
}

/** Runs a program of the system; what it says is shown only where it fails. */
function runQuietly(program, args) {
    const run = spawnSync(program, args, { encoding: 'utf8', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } });
    if (run.status === 0) return;
    process.stderr.write(`${run.stdout ?? ''}${run.stderr ?? ''}`);
    throw new Error(`${program} ${args[0]} failed (${run.error?.message ?? `exit code ${run.status}`}).`);
}

/**
 * The environment of an npm that no other npm has started, on the Node given. An npm around us leaves in it (`npm_*`) the
 * Node that it runs on itself, by which the server's install script decides whether to refuse, and how much may be said.
 */
export function cleanEnvironment(env, node) {
    const native = { JOBS: String(availableParallelism()) }; // how many files of a native part are compiled at once
    return { ...native, ...withoutNpm(env), PATH: `${dirname(node)}${delimiter}${env.PATH}` };
}

function withoutNpm(env) {
    return Object.fromEntries(Object.entries(env).filter(([name]) => !name.startsWith('npm_')));
}

/**
 * Where the machine's own npm keeps the settings of all users (its certificates, its registry). npm looks for them beside
 * the Node that runs it, so that one on our Node would not find them.
 */
function machineSettings(env) {
    const own = (env.PATH ?? '').split(delimiter).filter((folder) => !/[\\/]node_modules[\\/]/.test(folder));
    const asked = spawnSync('npm', ['config', 'get', 'globalconfig'], {
        env: { ...withoutNpm(env), PATH: own.join(delimiter) },
        encoding: 'utf8',
        shell: process.platform === 'win32',
    });
    return asked.status === 0 ? [`--globalconfig=${asked.stdout.trim()}`] : [];
}

/** Installs what a folder's lockfile names. npm says on the terminal what goes wrong. */
export function installPackages(folder, env = process.env) {
    const args = ['ci', '--no-audit', '--no-fund', '--loglevel=error', ...machineSettings(env)];
    const run = spawnSync('npm', args, {
        cwd: folder,
        stdio: 'inherit',
        env: cleanEnvironment(env, process.execPath),
        shell: process.platform === 'win32',
    });
    if (run.status === 0) return;
    const why = run.error?.message ?? `exit code ${run.status}`;
    throw new Error(`The packages of ${folder} could not be installed: npm failed (${why}), and says above why.`);
}

export function install() {
    if (browserPath() === undefined || !installed()) installDebian();
    if (installed()) return;
    process.stdout.write('Installing a VS Code for the tests under tests/editor/ (about 3 minutes, once) …\n');
    installPackages(here);
    if (!installed())
        throw new Error('The install went through, but there is no VS Code in tests/editor/node_modules/code-server.');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) install();
