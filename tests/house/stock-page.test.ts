import { expect, test } from 'vitest';
import { stockPage } from '../kit/stock-page';

test('extension/docs/stock.md says what is built in and how it is known (else: npm run words)', async () => {
    await expect(stockPage()).toMatchFileSnapshot('../../extension/docs/stock.md');
});
