import { expect, test } from 'vitest';
import { commandLinePage } from '../kit/command-line-page';

test('extension/docs/command-line.md says what the commands take (else: npm run commands)', async () => {
    await expect(commandLinePage()).toMatchFileSnapshot('../../extension/docs/command-line.md');
});
