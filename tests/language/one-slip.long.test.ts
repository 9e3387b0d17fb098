import { expect, it } from 'vitest';
import { slips } from './keystrokes';
import { mark } from './marked';
import { open, services } from './services';
import { step, texts, worthMending } from './slipped';

it('one keystroke that goes wrong is one thing to mend', async () => {
    const counts: number[] = [];
    let worst = { count: 0, shown: '' };
    for (const [index, text] of texts.entries()) {
        const before = (await worthMending(text)).length;
        for (const slip of slips(text, step, index)) {
            const findings = await worthMending(slip.text);
            const count = findings.length - before;
            counts.push(count);
            if (count > worst.count) worst = { count, shown: `${slip.what}:\n${mark(slip.text, findings)}` };
        }
    }
    const share = (most: number) => counts.filter((count) => count <= most).length / counts.length;
    expect(share(1), `${counts.length} slips, at worst ${worst.shown}`).toBeGreaterThanOrEqual(0.975);
    expect(share(2), worst.shown).toBeGreaterThanOrEqual(0.995);
    expect(worst.count, worst.shown).toBeLessThanOrEqual(4);
}, 120_000);

it('a line break in the middle of something is one thing to mend, wherever it is', async () => {
    await open('');
    const counts: number[] = [];
    let worst = { count: 0, shown: '' };
    for (const [index, text] of texts.entries()) {
        const before = (await worthMending(text)).length;
        const tokens = services.parser.Lexer.tokenize(text).tokens.filter(({ image }) => image.length > 1);
        for (const [count, { image, startOffset }] of tokens.entries()) {
            if (process.env.SLIP_STEP === undefined && count % 17 !== index) continue;
            const at = startOffset + 1 + (count % (image.length - 1));
            const torn = `${text.slice(0, at)}\n${text.slice(at)}`;
            const findings = await worthMending(torn);
            counts.push(findings.length - before);
            if (counts.at(-1)! > worst.count) worst = { count: counts.at(-1)!, shown: mark(torn, findings) };
        }
    }
    expect(counts.filter((count) => count <= 1).length / counts.length, worst.shown).toBeGreaterThanOrEqual(0.97);
    expect(worst.count, worst.shown).toBeLessThanOrEqual(2);
}, 120_000);
