import { expect, test } from 'vitest';
import { assistantsPage } from '../kit/assistants-page';

test('extension/docs/assistants.md says what can be asked, and every word and rule (else: npm run commands)', async () => {
    await expect(assistantsPage()).toMatchFileSnapshot('../../extension/docs/assistants.md');
});
