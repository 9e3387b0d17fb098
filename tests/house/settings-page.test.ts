import { expect, test } from 'vitest';
import { settingsPage } from '../kit/settings-page';

test('extension/docs/settings.md says what the manifest offers (else: npm run commands)', async () => {
    await expect(settingsPage()).toMatchFileSnapshot('../../extension/docs/settings.md');
});
