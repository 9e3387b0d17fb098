import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { open, services, start } from './services';

const workshop = readFileSync(new URL('../../samples/workshop.kerf', import.meta.url), 'utf8');

/** What the editor shows at the first place of these words behind another. */
async function hover(text: string, at: string, behind = ''): Promise<string> {
    await start();
    const document = await open(text);
    const offset = text.indexOf(at, text.indexOf(behind));
    const shown = await services.lsp.HoverProvider?.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(offset + 1),
    });
    return (shown?.contents as { value: string } | undefined)?.value ?? '';
}

describe('a coupon under the cursor', () => {
    it('tells the fit with standard errors, both R² and the range', async () => {
        const said = await hover(workshop, 'coupon walnut-12');
        expect(said).toMatch(/threshold dose: 0\.\d+ ± 0\.\d+ J\/mm²/);
        expect(said).toMatch(/removal energy: \d\.\d+ ± 0\.\d+ J\/mm³/);
        expect(said).toMatch(/fade, each later pass takes off: \d+(\.\d)? ± \d+(\.\d)? % of the pass before it/);
        const [, rSquared, predicted] = /R²: (0\.\d+); each square predicted by the others: (0\.\d+)/.exec(said) ?? [];
        expect(Number(rSquared)).toBeGreaterThan(0.99);
        expect(Number(predicted)).toBeLessThan(Number(rSquared));
        expect(said).toContain('measured from: 0.45 to 1.44 J/mm² a pass'); // 18 W / (400 · 0.1) and 36 W / (250 · 0.1)
        expect(said).toMatch(
            /scatter of one square: 0\.\d+ mm at 0\.41 mm \(one standard error\), to 86 % from these squares, to 14 % from the usual 0\.029 mm/,
        );
        expect(said).toContain('squares: 9, 6 more than the fit needs');
        expect(said).not.toContain('Outliers');
        expect(await hover(workshop, 'walnut-12', 'coupon walnut-12')).toContain('threshold dose');
    });
    it('names outliers', async () => {
        const said = await hover(
            workshop.replace('80 % at 250 mm/s gives 0.41', '80 % at 250 mm/s gives 0.11'),
            'coupon walnut-12',
        );
        expect(said).toMatch(/Outliers:\n\n- `burn 80 % at 250 mm\/s gives 0\.11 mm`: by the others 0\.\d+ mm/);
    });
    it('says whether the line fits, where squares were burnt twice', async () => {
        expect(await hover(workshop, 'coupon walnut-12')).toContain('does the line fit: not known: burn two or three');
        const again = workshop.replace(
            /coupon walnut-12 on shed \{[^}]*/,
            (block) => `${block}  burn 80 % at 250 mm/s gives 0.42 mm\n`,
        );
        expect(await hover(again, 'coupon walnut-12')).toMatch(
            /does the line fit: nothing against it in squares burnt twice \(F [\d.]+ with 6 and 1 degrees of freedom, by chance in \d+ %\)/,
        );
    });
    it('says when there are too few rows, and when the fade is taken for granted', async () => {
        const few = `laser l { beam co2 power 40 W spot 0.1 mm } board b { wood white-ash thickness 9 mm }
coupon b on l { burn 50 % at 100 mm/s gives 0.2 mm burn 90 % at 100 mm/s x 2 gives 0.8 mm }`;
        const said = await hover(few, 'coupon b');
        expect(said).toContain('Too few rows to stand alone');
        expect(said).toContain('as much as the first (taken for granted, ± 5 %)');
        expect(said).not.toContain('R²');
        expect(await hover(few.replace(/burn.*\}/, '}'), 'coupon b')).toContain('Nothing is measured');
    });
    it('is silent where its laser or board is not known', async () => {
        expect(
            await hover(workshop.replace('coupon walnut-12 on shed', 'coupon walnut-12 on shack'), 'coupon walnut-12'),
        ).not.toContain('threshold');
    });
    it('tells the tones that were judged', async () => {
        const judged =
            'burn 6 % at 600 mm/s gives tone 25 %\n  burn 10 % at 600 mm/s gives tone 55 %\n  burn 14 % at 600 mm/s gives tone 85 %';
        const said = await hover(workshop.replace('burn 40 % at 400', `${judged}\n  burn 40 % at 400`), 'coupon walnut-12');
        // 25 % at 0.045 and 85 % at 0.105 J/mm²: 0.02 J/mm² for none, and nothing is known beyond the last.
        expect(said).toMatch(
            /tone: begins at 0\.02, 84 % at 0\.1 J\/mm², not known beyond; half way a new square lies within ± \d+ % \(3 squares\)/,
        );
        expect(said).toContain('squares: 9, 6 more');
    });
    it('a row tells its dose, its fitted depth and its residual', async () => {
        const said = await hover(workshop, 'burn 80 % at 250', 'coupon walnut-12');
        expect(said).toContain('dose: 1.44 J/mm²');
        expect(said).toMatch(/by the fit: 0\.4\d? mm/);
        expect(said).toMatch(/measured: 0\.0\d+ mm (deeper|shallower)/);
        expect(said).toMatch(/standard errors from what the others say/);
        expect(said).not.toContain('threshold dose');
    });
    it('nothing of it shows at other places', async () => {
        expect(await hover(workshop, 'pitch', 'coupon walnut-12')).not.toContain('threshold');
        expect(await hover(workshop, 'laser shed')).not.toContain('threshold');
    });
});
