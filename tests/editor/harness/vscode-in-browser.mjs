#!/usr/bin/env node
/**
 * Takes the arguments of a desktop VS Code (`FOLDER --extensionDevelopmentPath=… --extensionTestsPath=…`)
 * and runs the same tests in a VS Code in a headless browser, so that it can stand where a test
 * runner wants the path of an executable.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { format } from 'node:util';
import { launchBrowser, windowAddress } from './browser.ts';
import { startCodeServer } from './code-server.ts';

const LONGEST = 10 * 60 * 1000; // ms

const option = (name) => process.argv.find((arg) => arg.startsWith(`--${name}=`))?.slice(name.length + 3);
const folder = process.argv[2];
const home = mkdtempSync(join(tmpdir(), 'kerfbook-host-'));
const server = await startCodeServer(home);
const browser = await launchBrowser();
const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });

const code = await new Promise((resolve) => {
    setTimeout(() => resolve(124), LONGEST).unref();
    page.on('crash', () => resolve(70));
    void page.exposeFunction('codeAutomationLog', (type, args) => {
        // The workbench itself talks a lot; the tests' own outcome goes into their report.
        if (process.env.KERFBOOK_VERBOSE) process.stdout.write(`${type}: ${format(...args)}\n`);
    });
    void page.exposeFunction('codeAutomationExit', (exit) => resolve(exit));
    page.goto(windowAddress(server, folder, option('extensionDevelopmentPath'), option('extensionTestsPath'))).catch((error) => {
        process.stderr.write(`${error}\n`);
        resolve(71);
    });
});

await browser.close();
server.stop();
rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
process.exit(code);
