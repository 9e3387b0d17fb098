import { describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { lowerFile } from '../../language/lowering/lower-file';
import { recipeFigures } from '../../shared/review/recipe-figures';
import { writtenFigures } from '../../shared/review/written';
import { jobSheet } from '../../shared/sheets/job-sheet';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';
import { open, services } from './services';

const text = `/// Sharp <b> & dry.
finish oily { kind drying-oil }
/// Dust it off first.
routine oiled for piece {
  /// Thin, and wipe it.
  finish piece with oily
}
// Nobody else's business.
/// A tray
/// for tea.
///
/// Made twice a year.
recipe tray "Tray" {
  laser shed
  /// The good side up.
  blank lid { of walnut-12  size 90 x 60 mm  grain along width }
  /// Feel for scratches.
  // With the lamp low.
  sand lid { take 0.1 mm  grits 120, 180, 240 }
  // Only mine.
  wait 1 h
  follow oiled on lid
}
recipe small based on tray {
  /// By hand.
  sand lid { take 0.05 mm }
}
`;

describe('what stands behind three slashes', () => {
    it('belongs to the recipe, part, step or stock below it; two slashes are private', async () => {
        const [tray, small] = lowerFile(await open(shop + text), services);
        expect(tray?.about).toBe('A tray for tea.\nMade twice a year.');
        expect(tray?.blanks[0]?.about).toBe('The good side up.');
        expect(tray?.steps.map(({ about }) => about)).toEqual(['Feel for scratches.', undefined, 'Thin, and wipe it.']);
        const last = tray?.steps.at(-1);
        expect(last?.kind === 'finish' && last.coat?.about).toBe('Sharp <b> & dry.');
        // A variant says what its base says, and its own where it has some.
        expect(small?.about).toBe(tray?.about);
        expect(small?.steps.map(({ about }) => about)).toEqual(['By hand.', undefined, 'Thin, and wipe it.']);
        expect(JSON.stringify(tray)).not.toMatch(/mine|lamp|business/);
    });

    it('is on the job sheet, with nothing of it read as markup', async () => {
        const { text: html } = jobSheet(await planOf(shop + text), []);
        expect(html).toContain('<p class="about">A tray for tea.</p><p class="about">Made twice a year.</p></header>');
        expect(html).toContain('<p class="about">Feel for scratches.</p>');
        expect(html).toContain('oily: Sharp &#60;b&#62; &#38; dry.');
        expect(html).not.toMatch(/Only mine|Nobody else/);
    });

    it('is told in reviews', async () => {
        const { recipe } = await planOf(shop + text);
        const about = (figures: readonly { label: string; text: string }[]) =>
            figures.find(({ label }) => label === 'about')?.text;
        expect(about(recipeFigures(recipe))).toBe('A tray for tea.\nMade twice a year.');
        expect(about(writtenFigures(recipe.steps[0]!))).toBe('Feel for scratches.');
        expect(about(writtenFigures(recipe.blanks[0]!))).toBe('The good side up.');
    });

    it('is said by hover, on the name and on the first word of a step', async () => {
        const said = async (word: string) => {
            const document = await open(shop + text);
            const found = await services.lsp.HoverProvider!.getHoverContent(document, {
                textDocument: { uri: document.uri.toString() },
                position: document.textDocument.positionAt((shop + text).lastIndexOf(word)),
            });
            return (found?.contents as MarkupContent | undefined)?.value ?? '';
        };
        expect(await said('tray "Tray"')).toContain('A tray for tea.\n\nMade twice a year.');
        expect(await said('oily\n')).toContain('Sharp \\<b\\> & dry.');
        expect(await said('sand lid { take 0.1')).toContain('Feel for scratches.');
        expect(await said('oiled on lid')).toContain('Dust it off first.');
    });
});
