import { URI } from 'langium';
import { describe, expect, it } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import type { MeasuredPocket } from '../../shared/recipe/run';
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

/** What runs measured on the laser shed in a board. */
async function pockets(run: string, sheet = 'walnut-12'): Promise<readonly MeasuredPocket[]> {
    const document = await open(`${shop}${recipe}${run}`);
    expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
    return services.names.MeasuredRuns.all()
        .files.flatMap((file) => file.pockets)
        .map(({ pocket }) => pocket)
        .filter((pocket) => pocket.where.uri === document.uri.toString() && pocket.laser === 'shed' && pocket.sheet === sheet);
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
        expect(await pockets('run tray 2026-11-20 { revision 3  pocket 80 % at 250 mm/s x 3 depth 0.48 mm }')).toMatchObject([
            burnt,
        ]);
    });
    it('takes the pitch that is written, else the step’s, else the coupon’s', async () => {
        const pitches = async (line: string) => (await pockets(`run tray 2026-11-20 { revision 3  ${line} }`))[0]?.pitch;
        expect(await pitches('pocket 80 % at 250 mm/s pitch 0.08 mm depth 0.2 mm')).toBe(0.08);
        expect(await pitches('pocket 80 % at 250 mm/s depth 0.2 mm')).toBe(0.1);
        expect(await pitches('rim 80 % at 250 mm/s depth 0.2 mm')).toBe(0.12);
    });
    it('is nothing without settings or without a depth', async () => {
        expect(await pockets('run tray 2026-11-20 { revision 3  pocket depth 0.48 mm  rim 80 % at 250 mm/s }')).toEqual([]);
    });
    it('of an earlier revision counts only where it says on what and in what it was burnt', async () => {
        const line = '80 % at 250 mm/s x 3 pitch 0.1 mm depth 0.48 mm';
        expect(await pockets(`run tray 2026-11-20 { revision 2  pocket ${line} }`)).toEqual([]);
        expect(await pockets(`run tray 2026-11-20 { revision 2  laser shed  pocket ${line} }`)).toEqual([]);
        expect(await pockets(`run tray 2026-11-20 { revision 2  laser shed  pocket of walnut-12 ${line} }`)).toMatchObject([
            burnt,
        ]);
    });
    it('is nothing for another laser or another board', async () => {
        const line = '80 % at 250 mm/s x 3 pitch 0.1 mm depth 0.48 mm';
        expect(await pockets(`run tray 2026-11-20 { revision 3  laser loft  pocket ${line} }`)).toEqual([]);
        expect(await pockets(`run tray 2026-11-20 { revision 3  pocket of cherry-6 ${line} }`)).toEqual([]);
    });
});

describe('what runs measured on a laser and a board', () => {
    const line = '36 W at 250 mm/s x 3 pitch 0.1 mm depth 0.48 mm';
    const bowl = recipe.replace('recipe tray', 'recipe bowl');
    const measured = async (uri: string) => {
        const document = services.shared.workspace.LangiumDocuments.getDocument(URI.parse(uri))!;
        return lowerFile(document, services).map(({ name, measured: found, runs }) => ({
            name,
            from: found.map((pocket) => `${pocket.recipe} ${pocket.date}`),
            runs: runs.map(({ date }) => date.value),
        }));
    };

    it('counts for every recipe of that laser and board, variants and those of other files too', async () => {
        await open(
            `${shop}${recipe}recipe oak-tray based on tray { make 2 }\nrun oak-tray 2026-02-01 { issue 3 rim ${line} }`,
            'file:///sight/trays.kerf',
        );
        await open(
            `use "trays.kerf"\n${bowl}run bowl 2026-03-01 { issue 3 pocket ${line} }\nrun tray 2026-03-02 { issue 3 pocket of cherry-6 ${line} }`,
            'file:///sight/bowls.kerf',
        );
        await open(`${shop}${recipe}`, 'file:///elsewhere/trays.kerf');
        const both = ['bowl 2026-03-01', 'oak-tray 2026-02-01'];
        expect(await measured('file:///sight/trays.kerf')).toEqual([
            // A run in another file is the recipe's own, too.
            { name: 'tray', from: both, runs: ['2026-03-02'] },
            { name: 'oak-tray', from: both, runs: ['2026-02-01'] },
        ]);
        expect(await measured('file:///sight/bowls.kerf')).toEqual([{ name: 'bowl', from: both, runs: ['2026-03-01'] }]);
        // A laser and a board of the same names in another shop are others.
        expect(await measured('file:///elsewhere/trays.kerf')).toEqual([{ name: 'tray', from: [], runs: [] }]);
    });

    it('follows an edit of another file, and leaves recipes alone that it does not reach', async () => {
        await open(`${shop}${recipe}`, 'file:///edited/trays.kerf');
        const other = await open(`${shop}${bowl}`, 'file:///aside/bowls.kerf');
        const [aside] = lowerFile(other, services);
        await open(`use "trays.kerf"\nrun tray 2026-03-01 { issue 3 pocket ${line} }`, 'file:///edited/runs.kerf');
        expect(await measured('file:///edited/trays.kerf')).toEqual([
            { name: 'tray', from: ['tray 2026-03-01'], runs: ['2026-03-01'] },
        ]);
        expect(lowerFile(other, services)[0]).toBe(aside);
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
