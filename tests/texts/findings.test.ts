import { expect } from 'vitest';
import { expectInVariants, looksAtVariants } from '../kit/in-variants';
import { expectToKeepToItsPage } from '../kit/keeps-to-its-page';
import { expectFindings, unmark } from '../language/marked';
import { eachText } from './cases';

/** All that is said of a text, by the text itself and by the trade, and nothing else: `^^^ rule: words` under each place. */
eachText('findings', async ({ text: marked, kit, name }) => {
    const { text, marks } = unmark(marked);
    const document = await kit.open(text, name);
    const trade = await kit.workshop.tradeFindings(document);
    expect(trade, 'the recipe was planned').toBeDefined();
    const found = [...kit.workshop.textFindings(document), ...(trade ?? [])];
    for (const finding of found) expectToKeepToItsPage(finding);
    expectFindings(text, marks, found);
    const rules = (trade ?? []).map(({ rule }) => rule);
    if (looksAtVariants) await expectInVariants(kit, text, rules);
});
