import { expect, it } from 'vitest';
import { KerfInlayHints } from '../../language/planned/inlay-hints';
import { open, services } from './services';

const range = { start: { line: 0, character: 0 }, end: { line: 9999, character: 0 } };

/** The text with the hints in it. */
async function hinted(text: string): Promise<string> {
    const document = await open(text);
    const hints = new KerfInlayHints(services).getInlayHints(document, { range, textDocument: { uri: document.uri.toString() } });
    let out = text;
    for (const { position, label } of hints.toSorted(
        (a, b) => b.position.line - a.position.line || b.position.character - a.position.character,
    )) {
        const at = document.textDocument.offsetAt(position);
        out = `${out.slice(0, at)}‹${String(label)}›${out.slice(at)}`;
    }
    return out;
}

it('what a step does without a line for it stands behind its brace, or behind its head', async () => {
    const text = `recipe plate {
  engrave pocket on lid { depth 0.5 mm }
  engrave said on lid { tone 50 %  air off  scan at 45 deg }
  cut rim on lid { circle 50 mm }
  seal lid with shellac
  seal lid with shellac { coats 2 }
  fill pocket with blue
  finish lid with oil { }
  sand lid { take 0.1 mm }
}`;
    expect(await hinted(text)).toBe(`recipe plate {
  engrave pocket on lid {‹without air, scan across grain› depth 0.5 mm }
  engrave said on lid { tone 50 %  air off  scan at 45 deg }
  cut rim on lid {‹air on› circle 50 mm }
  seal lid with shellac‹coats 1›
  seal lid with shellac { coats 2 }
  fill pocket with blue‹overfill 10 %›
  finish lid with oil {‹coats 1› }
  sand lid { take 0.1 mm }
}`);
});

it('what adjusts a step of a base says nothing by itself; a new step of a variant and one of a routine do', async () => {
    const text = `recipe plate { engrave pocket on lid { air on  scan along grain  depth 0.5 mm } }
recipe other based on plate {
  engrave pocket { depth 0.4 mm }
  after engrave pocket { cut rim on lid { circle 50 mm  tabs 2 } }
}
routine waxed for piece { finish piece with wax }`;
    expect(await hinted(text)).toBe(
        text.replace('cut rim on lid {', 'cut rim on lid {‹air on›').replace('with wax', 'with wax‹coats 1›'),
    );
});
