import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** From a keystroke to the painted picture, in the real editor: how tests/editor/speed/ measures it. */
const { status } = spawnSync(process.execPath, [fileURLToPath(new URL('../../editor/run.mjs', import.meta.url)), 'speed'], {
    stdio: 'inherit',
});
process.exitCode = status ?? 1;
