import { spawn } from 'node:child_process';
import os from 'node:os';

/**
 * Runs an install script while other work goes on, which has the processor first. What it says is kept until it has ended: `said` with
 * the exit code as `status`. It is never killed half way: what npm has half laid down would pass for the whole.
 */
export async function installBeside(script) {
    const begun = Date.now();
    const child = spawn(process.execPath, [script], { stdio: ['ignore', 'pipe', 'pipe'] });
    if (child.pid !== undefined) os.setPriority(child.pid, os.constants.priority.PRIORITY_BELOW_NORMAL);
    let said = '';
    for (const stream of [child.stdout, child.stderr])
        stream.setEncoding('utf8').on('data', (text) => {
            // The first word of it comes only where there is anything to install.
            if (said === '') console.log(`(beside it) ${text.split('\n')[0]}`);
            said += text;
        });
    const status = await new Promise((resolve) => {
        child.on('error', (error) => {
            said += `${error.message}\n`;
            resolve(1);
        });
        child.on('close', (code) => resolve(code ?? 1));
    });
    if (said !== '' && status === 0)
        console.log(`(the editor for the tests is installed: ${Math.round((Date.now() - begun) / 1000)} s)`);
    return { said, status };
}
