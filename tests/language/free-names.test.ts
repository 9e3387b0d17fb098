import { AstUtils, CstUtils, GrammarAST } from 'langium';
import { describe, expect, it } from 'vitest';
import type { MarkupContent } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { isBurnt } from '../../language/generated/ast';
import { runEdits } from '../../language/run-edits';
import { textFindings } from '../../language/text-findings';
import { open, services } from './services';

const words = [
    ...new Set(
        AstUtils.streamAllContents(services.Grammar)
            .filter(GrammarAST.isKeyword)
            .map(({ value }) => value)
            .filter((value) => /^\p{L}/u.test(value)),
    ),
];

/** A text in which everything that can have a name has this one, and is named by it wherever a name can stand. */
function allCalled(w: string, other: string): string {
    return `beam ${w} { wavelength 10.6 um }
wood ${w} { density 600 kg/m3 }
abrasive ${w} { grain 120 um }
abrasive ${other} { grain 90 um }
board ${w} { wood ${w}  thickness 12 mm }
laser ${w} { beam ${w}  power 45 W }
resin ${other} { mix 2 : 1 by volume  pot life 40 min }
resin ${w} { kind ${other} }
sealer ${other} { dry 1 h }
sealer ${w} { kind ${other} }
glue ${other} { film 0.06 mm }
glue ${w} { kind ${other} }
finish ${other} { dry 1 h }
finish ${w} { kind ${other} }
shop ${w} { currency EUR }
coupon ${w} on ${w} { burn 40 % at 400 mm/s gives 0.09 mm }
recipe ${w} "Title" {
  laser ${w}
  art ${w} "a.svg" { width 20 mm }
  blank ${w} { of ${w}  size 300 x 200 mm }
  engrave ${w} on ${w} { art ${w} at 10, 10 mm  depth 0.5 mm }
  engrave ${other} on ${w} {
    art ${w} inverse within blank
    art ${w}
    depth 0.5 mm
  }
  seal ${w} with ${w}
  fill ${w} with ${w} { overfill 15 % }
  inlay ${w} into ${other} { glue ${w} }
  inlay ${other} into ${w}
  peel ${w}
  sand ${w} { grits ${w}, ${other} }
  finish ${w} with ${w}
  mask ${w}
  check ${w} { depth 0.5 mm }
}
recipe ${other} based on ${w} {
  engrave ${w} { depth 0.4 mm }
  without peel ${w}
  without fill ${w}
  after seal ${w} { mask ${w} }
  before engrave ${w} { wait 1 h }
}
run ${w} 2026-11-20 {
  laser ${w}
  engrave ${w} of ${w} 80 % at 250 mm/s x 2 depth 0.5 mm
${bare(w)}}
`;
}

/** A step stands in a run by its name alone; not one that is called like the kinds of steps that can stand there. */
function bare(w: string): string {
    return w === 'engrave' || w === 'cut' ? '' : `  ${w} of ${w} depth 0.5 mm\n  ${w} depth 0.5 mm\n`;
}

async function brokenIn(text: string): Promise<string[]> {
    // One after the other in one place: each would look through the runs of all that lie beside it.
    const found = textFindings(await open(text, 'file:///shop/word.kerf'), services);
    return found.filter(({ rule }) => /syntax|name|word/.test(rule)).map(({ rule, message }) => `${rule}: ${message}`);
}

describe('every word of the language is a name where a name stands', () => {
    it.each(words)('%s', async (word) => {
        expect(await brokenIn(allCalled(word, 'other'))).toEqual([]);
    });
});

describe('a word that is a name', () => {
    it('begins no line: what stands below a line that breaks off is kept', async () => {
        const text = 'recipe r {\n  make 2\n  laser\n  blank b { of w  size 3 x 2 mm }\n}';
        const document = await open(text);
        expect(document.parseResult.parserErrors).toHaveLength(1);
        const findings = textFindings(document, services).filter(({ rule }) => rule === 'syntax');
        expect(findings.map(({ message }) => message)).toEqual(['After `laser` comes the name of a laser.']);
    });

    it.each([
        ['engrave on tray { circle 5 mm }', 'After `engrave` comes a name for this step, not `on`.'],
        ['seal with shellac', 'After `seal` comes the name of a blank, not `with`.'],
        ['inlay into pocket', 'After `inlay` comes the name of the engraving or cut that goes in, not `into`.'],
        ['blank tray { of size 30 x 20 mm }', 'After `of` comes the name of a board or veneer, not `size`.'],
    ])('is not taken for one that is missing: %s', async (line, message) => {
        const findings = textFindings(await open(`recipe r {\n  ${line}\n}`), services);
        expect(findings.filter(({ rule }) => rule === 'syntax').map((each) => each.message)).toEqual([message]);
    });

    it('is renamed, found and explained like any other', async () => {
        const text =
            'board face { thickness 12 mm }\nrecipe r { blank back { of face  size 30 x 20 mm } engrave grain on back { circle 5 mm } }\n';
        const document = await open(text);
        const at = (offset: number) => ({
            textDocument: { uri: document.uri.toString() },
            position: document.textDocument.positionAt(offset),
        });
        const edit = await services.lsp.RenameProvider!.rename(document, { ...at(text.indexOf('face') + 1), newName: 'depth' });
        expect(Object.values(edit!.changes!).flat()).toHaveLength(2);
        const hover = await services.lsp.HoverProvider!.getHoverContent(document, at(text.indexOf('grain') + 1));
        expect((hover!.contents as MarkupContent).value).toContain('engrave grain on back');
        const tokens = await services.lsp.SemanticTokenProvider!.semanticHighlight(document, at(0));
        expect(tokens.data.length / 5).toBe(6); // face, r, back, face, grain, back
    });

    it('in a run can have its kind before it', async () => {
        const text =
            'board b { thickness 12 mm }\nrecipe r { blank t { of b  size 30 x 20 mm } engrave depth on t { circle 5 mm } cut note on t { circle 9 mm } }\n' +
            'run r 2026-11-20 {\n  engrave depth 80 % at 250 mm/s\n  cut note 90 % at 8 mm/s\n  depth depth 0.5 mm\n  note "fine"\n}\n';
        const document = await open(text);
        const lines = AstUtils.streamAst(document.parseResult.value).filter(isBurnt).toArray();
        expect(lines.map(({ kind, step }) => [kind, step.ref?.$type])).toEqual([
            ['engrave', 'Engrave'],
            ['cut', 'Cut'],
            [undefined, 'Engrave'],
        ]);
        expect(
            CstUtils.streamCst(document.parseResult.value.$cstNode!)
                .filter(({ text: word }) => word === '"fine"')
                .count(),
        ).toBe(1);
    });

    it('gets its kind in a run when a step is renamed to it', async () => {
        const text =
            'recipe r { engrave pocket on t { circle 5 mm } }\nrun r 2026-11-20 {\n  pocket 80 % at 250 mm/s depth 0.5 mm\n}\n';
        const document = await open(text);
        const position = document.textDocument.positionAt(text.indexOf('pocket'));
        const params = { textDocument: { uri: document.uri.toString() }, position, newName: 'depth' };
        const edit = await services.lsp.RenameProvider!.rename(document, params);
        const after = TextDocument.applyEdits(document.textDocument, Object.values(edit!.changes!).flat());
        expect(after).toContain('engrave depth on t');
        expect(after).toContain('\n  engrave depth 80 % at');
    });

    it('is written into a run so that it is read back', async () => {
        const document = await open('recipe r { engrave depth on t { circle 5 mm } }\n');
        const run = { recipe: 'r', date: '2026-11-20', revision: 1, lines: ['depth 80 % at 250 mm/s depth 0.5 mm'], notes: [] };
        const [edit] = runEdits(document, run, services)!;
        expect(edit!.text).toContain('\n  engrave depth 80 % at 250 mm/s depth 0.5 mm\n');
    });
});
