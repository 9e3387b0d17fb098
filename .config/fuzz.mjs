/** `npm run fuzz [RUNS]`: the fuzz tests with many more runs; a failure prints its seed. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const vitest = ['node_modules/vitest/vitest.mjs', 'run', '-c', '.config/vitest.ts', '--test-timeout=3600000', 'tests/fuzz'];
const env = { ...process.env, FUZZ_RUNS: process.argv[2] ?? '5000' };
process.exit(spawnSync(process.execPath, vitest, { cwd: root, stdio: 'inherit', env }).status ?? 1);
