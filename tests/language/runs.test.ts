import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import type { BurnRow } from '../../shared/burn/rows';
import { runRows } from '../../shared/burn/run-rows';
import { openAt } from './cursor';
import { expectMarked } from './marked';
import { open, services } from './services';

const shop = `
laser shed { beam co2  power 45 W  spot 0.15 mm }
laser loft { beam blue-diode  power 10 W  spot 0.08 mm }
board walnut-12 { wood black-walnut  thickness 12 mm }
board cherry-6 { wood black-cherry  thickness 6 mm }
coupon walnut-12 on shed { pitch 0.12 mm  burn 40 % at 400 mm/s gives 0.09 mm }
`;
const recipe = `recipe tray {
  revision 3
  laser shed
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  engrave pocket on tray { circle 80 mm  depth 0.5 mm  pitch 0.1 mm  air off }
  engrave rim on tray { circle 90 mm  depth 0.5 mm  air off }
}
`;

async function rows(run: string, sheet = 'walnut-12'): Promise<readonly BurnRow[]> {
    const document = await open(`${shop}${recipe}${run}`);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
    const [lowered] = lowerFile(document, services);
    const found = lowered!.blanks[0]!.sheet!;
    return runRows(lowered!, { ...found, name: sheet }).map(({ where: _where, ...row }) => row);
}

describe('a run', () => {
    it('is read with its day, settings, measures and notes, on one line or on several', async () => {
        const document = await open(
            `${shop}${recipe}run tray 2026-11-20 { revision 3  pocket depth 0.48 mm  rim of walnut-12 80 % at 250 mm/s x 3 depth 0.5 mm width 90 mm  note "good" }
run tray 2026-11-21 {
  pocket 36 W at 250 mm/s pitch 0.10 mm
  note "again"
}`,
        );
        expect(textFindings(document, services).map(({ rule }) => rule)).toEqual(['missing-property']);
        const [first, second] = lowerFile(document, services)[0]!.runs;
        expect(first).toMatchObject({ date: { value: '2026-11-20' }, revision: 3, notes: ['good'] });
        expect(first?.burnt[0]).toMatchObject({ step: { value: 'pocket' }, passes: 1, depth: { value: 0.48 } });
        expect(first?.burnt[1]).toMatchObject({ sheet: 'walnut-12', power: { value: 0.8 }, passes: 3, width: { value: 90 } });
        expect(second?.burnt[0]).toMatchObject({ power: { value: 36 }, pitch: { value: 0.1 } });
        expect(second?.burnt[0]?.depth).toBeUndefined();
    });

    it('has findings for what is unknown, no day, unlikely or says nothing', () =>
        expectMarked(`${shop}${recipe}
run trays 2026-11-20 { revision 3 }
    ^^^^^ unknown-name: tray
run tray 2026-02-30 {
         ^^^^^^^^^^ impossible-value: no day
  revision 3
  pockets depth 0.5 mm
  ^^^^^^^ unknown-name: pocket
  pocket
  ^^^^^^ missing-property: neither
  pocket depth 48 mm
               ^^ unlikely-magnitude
  rim 80 mm at 250 mm/s depth 0.5 mm
         ^^ wrong-unit
}
run tray 2026-1-5 {
         ^^^^^^^^ impossible-value
  revision 3
}`));

    it('of two figures for a day says what was meant', async () => {
        const document = await open(`${shop}${recipe}run tray 2026-1-5 { revision 3 }`);
        const [finding] = textFindings(document, services);
        expect(finding?.fixes[0]?.changes[0]).toMatchObject({ text: '2026-01-05' });
    });

    it('breaks only the line that is broken', async () => {
        const document = await open(`${shop}${recipe}run tray 2026-11-20 {
  revision 3
  pocket depth
  rim depth 0.5 mm
  nonsense "x" 3
  note "still there"
}`);
        const broken = textFindings(document, services).filter(({ rule }) => rule === 'syntax');
        expect(broken).toHaveLength(2);
        expect(lowerFile(document, services)[0]!.runs[0]).toMatchObject({ notes: ['still there'] });
        expect(lowerFile(document, services)[0]!.runs[0]?.burnt.map(({ step }) => step.value)).toContain('rim');
    });

    it('left open does not swallow what follows', async () => {
        const document = await open(`${shop}run tray 2026-11-20 {\n  revision 3\n\n${recipe}`);
        expect(lowerFile(document, services).map(({ name }) => name)).toEqual(['tray']);
    });
});

describe('what a run adds to the fit', () => {
    const burnt = { power: 36, speed: 250, pitch: 0.1, passes: 3, depth: 0.48, tolerance: 0 };

    it('is a row with settings and depth, in base units', async () => {
        expect(await rows('run tray 2026-11-20 { revision 3  pocket 80 % at 250 mm/s x 3 depth 0.48 mm }')).toEqual([burnt]);
    });
    it('takes the pitch that is written, else the step’s, else the coupon’s', async () => {
        const pitches = async (line: string) => (await rows(`run tray 2026-11-20 { revision 3  ${line} }`))[0]?.pitch;
        expect(await pitches('pocket 80 % at 250 mm/s pitch 0.08 mm depth 0.2 mm')).toBe(0.08);
        expect(await pitches('pocket 80 % at 250 mm/s depth 0.2 mm')).toBe(0.1);
        expect(await pitches('rim 80 % at 250 mm/s depth 0.2 mm')).toBe(0.12);
    });
    it('is nothing without settings or without a depth', async () => {
        expect(await rows('run tray 2026-11-20 { revision 3  pocket depth 0.48 mm  rim 80 % at 250 mm/s }')).toEqual([]);
    });
    it('of an earlier revision counts only where it says on what and in what it was burnt', async () => {
        const line = '80 % at 250 mm/s x 3 pitch 0.1 mm depth 0.48 mm';
        expect(await rows(`run tray 2026-11-20 { revision 2  pocket ${line} }`)).toEqual([]);
        expect(await rows(`run tray 2026-11-20 { revision 2  laser shed  pocket ${line} }`)).toEqual([]);
        expect(await rows(`run tray 2026-11-20 { revision 2  laser shed  pocket of walnut-12 ${line} }`)).toEqual([burnt]);
    });
    it('is nothing for another laser or another board', async () => {
        const line = '80 % at 250 mm/s x 3 pitch 0.1 mm depth 0.48 mm';
        expect(await rows(`run tray 2026-11-20 { revision 3  laser loft  pocket ${line} }`)).toEqual([]);
        expect(await rows(`run tray 2026-11-20 { revision 3  pocket of cherry-6 ${line} }`)).toEqual([]);
    });
});

describe('in a run', () => {
    const labels = async (marked: string): Promise<string[]> => {
        const { document, at } = await openAt(`${shop}${recipe}${marked}`);
        const list = await services.lsp.CompletionProvider!.getCompletion(document, at);
        return (list?.items ?? []).map(({ label }) => label);
    };
    it('the steps of its recipe are proposed, with what else a line may be', async () => {
        expect(await labels('run tray 2026-11-20 {\n  <|>\n}')).toEqual(
            expect.arrayContaining(['pocket', 'rim', 'note', 'laser']),
        );
        expect(await labels('run tray 2026-11-20 {\n  revision 3\n  po<|>\n}')).toContain('pocket');
        expect(await labels('run <|>')).toEqual(['tray']);
        expect(await labels('run tray 2026-11-20 {\n  pocket <|>\n}')).toEqual(expect.arrayContaining(['of', 'depth', 'width']));
    });
    it('the name of a step leads to it and is renamed with it', async () => {
        const { document, at } = await openAt(`${shop}${recipe}run tray 2026-11-20 {\n  revision 3\n  po<|>cket depth 0.5 mm\n}`);
        const found = await services.lsp.DefinitionProvider!.getDefinition(document, at);
        expect(found?.[0]?.targetSelectionRange.start.line).toBe(10);
        const edit = await services.lsp.RenameProvider!.rename(document, { ...at, newName: 'hollow' });
        expect(Object.values(edit?.changes ?? {}).flat()).toHaveLength(2);
    });
    it('stands in the outline by its recipe and day', async () => {
        const document = await open(`${shop}${recipe}run tray 2026-11-20 { revision 3 }`);
        const symbols = await services.lsp.DocumentSymbolProvider!.getSymbols(document, {
            textDocument: { uri: document.uri.toString() },
        });
        expect(symbols.at(-1)?.name).toBe('run tray 2026-11-20');
    });
});
