import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { textFindings } from '../../language/text-findings';
import { mark } from './marked';
import { open, services, start } from './services';

const whole = ['workshop', 'heron-tray', 'tide-coaster']
    .map((name) => readFileSync(`samples/${name}.kerf`, 'utf8').replaceAll(/^use .*$/gm, ''))
    .join('\n');

/** One word in `every`, changed: at worst how many findings, and where. TYPO_STEP=1 tries every word. */
async function worst(change: (image: string) => string, every: number): Promise<{ count: number; shown: string }> {
    await start();
    const { tokens } = services.parser.Lexer.tokenize(whole);
    const step = Number(process.env.TYPO_STEP ?? every);
    let most = { count: -1, shown: '' };
    for (const token of tokens.filter((_token, index) => index % step === 0)) {
        const end = token.startOffset + token.image.length;
        const text = whole.slice(0, token.startOffset) + change(token.image) + whole.slice(end);
        const findings = textFindings(await open(text, 'file:///shop/typo.kerf'), services).filter(
            ({ rule }) => rule === 'syntax',
        );
        if (findings.length > most.count) most = { count: findings.length, shown: `at ${token.image}:\n${mark(text, findings)}` };
    }
    return most;
}

test('one word left out never floods the file', async () => {
    const { count, shown } = await worst(() => '', 11);
    expect(count, shown).toBeLessThanOrEqual(2);
});

test('one word written twice never floods the file', async () => {
    const { count, shown } = await worst((image) => `${image} ${image}`, 13);
    expect(count, shown).toBeLessThanOrEqual(2);
});

test('one letter wrong is said once', async () => {
    const { count, shown } = await worst((image) => (image.length < 2 ? image : `${image[1]}${image[0]}${image.slice(2)}`), 13);
    expect(count, shown).toBeLessThanOrEqual(1);
});
