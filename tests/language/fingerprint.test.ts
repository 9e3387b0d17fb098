import type { LangiumDocument } from 'langium';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { fingerprintOf } from '../../language/fingerprint';
import { isFile, isRecipe } from '../../language/generated/ast';
import { textFindings } from '../../language/text-findings';
import { open, services } from './services';

const shop = `
laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm }
board walnut-12 { wood black-walnut  thickness 12 mm +- 0.3 mm  moisture 8 %  bought 2026-03-01 }
veneer maple-06 { wood sugar-maple  thickness 0.6 mm }
coupon walnut-12 on shed { burn 80 % at 300 mm/s gives 0.34 mm }
`;
const recipe = `
recipe tray "Tray" {
  issue 4
  make 2
  laser shed
  art moon "moon.svg" { width 40 mm }
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  engrave pocket on tray {
    art moon .deep, .foam at 150, 100 mm turned 15 deg
    depth 0.54 mm
    pitch 0.10 mm
    allow air-while-engraving because "the lens stays clean"
  }
  wait 24 h "the oil dries"
  sand tray { take 0.05 mm  grits 180, 240 }
}
`;
const variant = `
recipe small-tray based on tray {
  blank tray { size 200 x 150 mm }
}
`;

let folders = 0;

async function built(text: string, stock = shop): Promise<LangiumDocument> {
    const at = `file:///marks-${++folders}`;
    await open(stock, `${at}/shop.kerf`);
    return open(`use "shop.kerf"\n${text}`, `${at}/tray.kerf`);
}

function markIn(document: LangiumDocument, name = 'tray'): string {
    const file = document.parseResult.value;
    const found = isFile(file) ? file.entries.filter(isRecipe).find((each) => each.name === name) : undefined;
    return fingerprintOf(found!);
}

async function markOf(text: string, stock = shop, name = 'tray'): Promise<string> {
    return markIn(await built(text, stock), name);
}

const edit = (from: string, to: string): string => {
    expect(recipe).toContain(from);
    return recipe.replace(from, to);
};

describe('the fingerprint of a recipe', () => {
    it('is one for all versions of the tool: runs keep it for years', async () => {
        // Were one of these another, every recipe would look changed. Never write the new value here: mend what changed it.
        const marks = [await markOf(recipe), await markOf(recipe + variant, shop, 'small-tray')];
        expect(marks).toEqual(['b92181a1', '2941362e']);
    });

    it.each([
        ['moved text', () => `\n\n// a comment\n${recipe}`],
        ['comments inside', () => edit('depth 0.54 mm', '/* deep */ depth 0.54 mm // enough')],
        ['layout', () => recipe.replaceAll(/ {2,}/g, ' ').replace('size', '\n   size')],
        ['line ends', () => recipe.replaceAll('\n', '\r\n')],
        ['digits that say the same', () => edit('depth 0.54 mm', 'depth 0.540 mm')],
        [
            'the order of lines that has no meaning',
            () => edit('    depth 0.54 mm\n    pitch 0.10 mm\n', '    pitch 0.10 mm\n    depth 0.54 mm\n'),
        ],
        ['the order of clauses', () => edit('at 150, 100 mm turned 15 deg', 'turned 15 deg at 150, 100 mm')],
        ['commas between picks', () => edit('.deep, .foam', '.deep .foam')],
        ['the sign between two numbers', () => edit('300 x 200', '300 × 200')],
        ['a P before a grit', () => edit('180, 240', 'P180, P240')],
        ['the title', () => edit('"Tray"', '"Serving tray"')],
        ['the issue and its earlier spelling', () => edit('issue 4', 'revision 5')],
        ['the number of pieces', () => edit('make 2', 'make 20')],
        ['a reason', () => edit('    allow air-while-engraving because "the lens stays clean"\n', '')],
        ['another recipe of the file', () => `${recipe}\nrecipe other { issue 1 }\n`],
        ['a run', () => `${recipe}\nrun tray 2026-03-01 { issue 4  pocket depth 0.5 mm }\n`],
    ])('stays: %s', async (_, text) => {
        expect(await markOf(text())).toBe(await markOf(recipe));
    });

    it.each([
        ['a depth', () => edit('0.54 mm', '0.56 mm')],
        ['two numbers changed about', () => edit('at 150, 100 mm', 'at 100, 150 mm')],
        [
            'the order of steps',
            () =>
                edit('  wait 24 h "the oil dries"\n', '').replace(
                    'grits 180, 240 }\n',
                    'grits 180, 240 }\n  wait 24 h "the oil dries"\n',
                ),
        ],
        ['the order of grits', () => edit('180, 240', '240, 180')],
        ['a step less', () => edit('  wait 24 h "the oil dries"\n', '')],
        ['a name', () => recipe.replaceAll('pocket', 'hollow')],
        ['another board', () => edit('of walnut-12', 'of maple-06')],
    ])('changes: %s', async (_, text) => {
        expect(await markOf(text())).not.toBe(await markOf(recipe));
    });

    it('holds the stock that the recipe names, and no more of it', async () => {
        const before = await markOf(recipe);
        const stock = (from: string, to: string) => markOf(recipe, shop.replace(from, to));
        expect(await stock('thickness 12 mm', 'thickness 11.8 mm')).not.toBe(before);
        expect(await stock('power 45 W', 'power 40 W')).not.toBe(before);
        expect(await stock('thickness 0.6 mm', 'thickness 0.5 mm')).toBe(before);
        expect(await stock('bought 2026-03-01', 'bought 2026-09-01')).toBe(before);
        expect(await stock('gives 0.34 mm', 'gives 0.30 mm')).toBe(before);
        expect(await markOf(`${shop}${recipe}`, '')).toBe(before);
    });

    it('holds the routines that the recipe follows, and the order of their steps', async () => {
        const follows = edit('  sand tray', '  follow wax on tray\n  sand tray');
        const routine = (steps: string) => `routine wax for piece { ${steps} }\n`;
        const before = await markOf(`${routine('mask piece  peel piece')}${follows}`);
        expect(await markOf(`// of all trays\n${follows}${routine('mask piece\n\n peel piece')}`)).toBe(before);
        expect(await markOf(`${routine('peel piece  mask piece')}${follows}`)).not.toBe(before);
        expect(await markOf(`${routine('mask piece')}${follows}`)).not.toBe(before);
        expect(await markOf(`${routine('mask piece')}${recipe}`)).toBe(await markOf(recipe));
    });

    it('of a variant holds its base', async () => {
        const before = await markOf(recipe + variant, shop, 'small-tray');
        expect(await markOf(edit('0.54 mm', '0.56 mm') + variant, shop, 'small-tray')).not.toBe(before);
        expect(await markOf(recipe + variant.replace('200 x 150', '200 x 160'), shop, 'small-tray')).not.toBe(before);
        expect(await markOf(recipe + variant)).toBe(await markOf(recipe));
    });

    it('is that of the text laid out', async () => {
        const document = await built(
            recipe.replaceAll('  ', ' ').replace('at 150, 100 mm turned 15 deg', 'turned 15 deg  at 150 , 100 mm'),
        );
        const options = { tabSize: 2, insertSpaces: true };
        const edits = await services.lsp.Formatter!.formatDocument(document, {
            textDocument: { uri: document.uri.toString() },
            options,
        });
        expect(edits.length).toBeGreaterThan(0);
        const text = TextDocument.applyEdits(document.textDocument, edits);
        expect(await markOf(text.replace('use "shop.kerf"\n', ''))).toBe(markIn(document));
    });
});

const run = (day: string, mark: string, issue = 4) =>
    `run tray ${day} { of plan ${mark}  issue ${issue}  pocket of walnut-12 80 % at 400 mm/s planned 0.54 mm +- 0.03 mm depth 0.5 mm }\n`;
const said = (document: LangiumDocument) => textFindings(document, services).filter(({ rule }) => rule.startsWith('issue-'));

describe('an issue', () => {
    it('that stayed while the recipe changed after its last run gets a hint, with the next number', async () => {
        const mark = await markOf(recipe);
        const changed = edit('0.54 mm', '0.56 mm');
        const findings = said(await built(`${changed}${run('2026-03-01', mark)}`));
        expect(findings).toMatchObject([{ rule: 'issue-kept', severity: 'hint' }]);
        expect(findings[0]?.message).toContain('since its run of 2026-03-01 and is still issue 4. Make it issue 5');
        expect(findings[0]?.fixes[0]?.changes).toMatchObject([{ text: 'issue 5' }]);
    });

    it.each([
        ['the recipe is the one of the last run', async () => `${recipe}${run('2026-03-01', await markOf(recipe))}`],
        ['it was counted up', async () => `${edit('issue 4', 'issue 5')}${run('2026-03-01', 'aaaaaaaa')}`],
        [
            'the change was taken back since',
            async () => `${recipe}${run('2026-03-01', 'aaaaaaaa', 3)}${run('2026-03-02', await markOf(recipe))}`,
        ],
        ['a run keeps no mark', async () => `${recipe}run tray 2026-03-01 { issue 4  pocket depth 0.5 mm }\n`],
        ['the recipe has no issue', async () => `${edit('  issue 4\n', '')}${run('2026-03-01', 'aaaaaaaa')}`],
    ])('has nothing said of it where %s', async (_, text) => {
        expect(said(await built(await text()))).toEqual([]);
    });

    it('that two branches both counted up to is seen at the later run', async () => {
        const mark = await markOf(recipe);
        const text = `${recipe}${run('2026-03-01', 'aaaaaaaa')}${run('2026-03-02', mark)}${run('2026-03-03', mark)}`;
        const findings = said(await built(text));
        expect(findings).toMatchObject([{ rule: 'issue-twice', severity: 'warning', related: [{}] }]);
        expect(findings[0]?.message).toContain('The runs of 2026-03-01 and 2026-03-02 are both of issue 4');
        expect(findings[0]?.message).toContain('such as 5');
    });

    it('is told anew when a run of another file comes in', async () => {
        const home = await built(recipe);
        expect(said(home)).toEqual([]);
        const at = home.uri.toString().replace('tray.kerf', 'runs/a.kerf');
        const file = await open(run('2026-03-01', 'aaaaaaaa'), at);
        expect(said(home)).toMatchObject([{ rule: 'issue-kept' }]);
        expect(said(file)).toEqual([]);
    });
});

describe('`of plan`', () => {
    it.each(['123456', '7e3c2a91', '00000000', 'deadbeef'])('reads %s as a mark', async (mark) => {
        const document = await built(`${recipe}run tray 2026-03-01 { of plan ${mark} }`);
        expect(textFindings(document, services).filter(({ rule }) => rule === 'syntax')).toEqual([]);
    });

    it('leaves a board called plan and a step called plan or planned what they are', async () => {
        const stock = `${shop}board plan { wood black-walnut  thickness 12 mm }\n`;
        const text = recipe.replaceAll('pocket', 'plan').replace('of walnut-12', 'of plan');
        const document = await built(
            `${text}run tray 2026-03-01 {\n  of plan 7f3c2a91\n  plan of plan 100000 mW at 400 mm/s depth 0.5 mm\n  plan planned 0.5 mm width 3 mm\n}`,
            stock,
        );
        expect(textFindings(document, services).filter(({ severity }) => severity === 'error')).toEqual([]);
    });

    it('without a mark says what is missing', async () => {
        const document = await built(`${recipe}run tray 2026-03-01 {\n  of plan\n  issue 4\n}`);
        const messages = textFindings(document, services)
            .filter(({ rule }) => rule === 'syntax')
            .map(({ message }) => message);
        expect(messages).toHaveLength(1);
        expect(messages[0]).toContain('fingerprint');
    });
});
