import { expect } from 'vitest';
import { spanEdits, withEdits } from '../kit/fix-effects';
import { eachText } from './cases';

/** `=== fix rule: Title` and the whole text as that fix leaves it; `=== no fix rule` where the rule has none. */
eachText('fixes', async ({ text, expected, kit, name }) => {
    const document = await kit.open(text, name);
    const found = [...kit.workshop.textFindings(document), ...((await kit.workshop.tradeFindings(document)) ?? [])];
    expect(expected).not.toEqual([]);
    for (const { kind, of, lines } of expected) {
        const [rule = '', title] = (kind === 'no' ? of.replace('fix ', '') : of).split(': ');
        const fixes = found.filter((finding) => finding.rule === rule).flatMap((finding) => finding.fixes);
        expect(
            found.map((finding) => finding.rule),
            'the rule speaks',
        ).toContain(rule);
        if (kind === 'no') {
            expect(fixes).toEqual([]);
            continue;
        }
        const fix = fixes.find((each) => each.title === title);
        expect(fix, `“${title}” among: ${fixes.map((each) => each.title).join(', ')}`).toBeDefined();
        expect(withEdits(text, spanEdits(fix!, text)).trimEnd()).toBe(lines.join('\n'));
    }
});
