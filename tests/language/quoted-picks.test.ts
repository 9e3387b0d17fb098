import { describe, expect, it } from 'vitest';
import type { TextEdit } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { proposePicks } from '../../language/editor/complete-picks';
import { pickText } from '../../shared/recipe/pick-text';
import { memoryWorkshop } from '../kit/memory-workshop';
import { planOf } from '../kit/plan-of';
import { shop } from '../kit/shop';

/** As drawing programs name layers and shapes. */
const layers = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <g id="Layer 1.2"><rect width="10" height="10"/></g><rect id="gö&quot;\\" x="20" width="5" height="5"/><rect class="st0 sm:fill" y="20" width="4" height="4"/></svg>`;
const recipe = (line: string) => `use "shop.kerf"
recipe plate "Plate" {
  laser shed
  art layers "layers.svg"
  blank tray { of walnut-12 size 100 x 80 mm grain along width }
  engrave face on tray { ${line} depth 0.3 mm }
}`;

describe('parts whose names have dots, spaces and other signs', () => {
    for (const [line, burnt] of [
        ['art layers #"Layer 1.2"', 100],
        ['art layers #"gö\\"\\\\"', 25],
        ['art layers ."sm:fill"', 16],
        ['art layers but #"Layer 1.2", .st0', 25],
    ] as const) {
        it(`are picked by ${line}`, async () => {
            const plan = await planOf(recipe(line).replace('use "shop.kerf"', shop), { 'layers.svg': layers });
            expect(plan.steps[0]!.laser!.area).toBeCloseTo(burnt, 6);
        });
    }

    it('are proposed as they are written, before and behind the quote', async () => {
        const kit = await memoryWorkshop({ 'layers.svg': layers });
        await kit.open(shop, 'shop.kerf');
        for (const [typed, behind] of [
            ['#', ''],
            ['#"', '"'],
            ['#"Lay', '"'],
        ] as const) {
            const text = recipe(`art layers ${typed}${behind}`);
            const document = await kit.open(text);
            const list = await kit.workshop.services.lsp.CompletionProvider!.getCompletion(document, {
                textDocument: { uri: document.uri.toString() },
                position: document.textDocument.positionAt(text.indexOf(typed, text.indexOf('art layers #')) + typed.length),
            });
            const item = list!.items.find(({ label }) => label === '#"Layer 1.2"');
            expect(item, typed).toBeDefined();
            const changed = TextDocument.applyEdits(document.textDocument, [item!.textEdit as TextEdit]);
            expect(changed).toContain('art layers #"Layer 1.2" depth');
        }
    });

    it('are told as they are written where none is found', async () => {
        const kit = await memoryWorkshop({ 'layers.svg': layers });
        await kit.open(shop, 'shop.kerf');
        const messages = (await kit.findings(recipe('art layers #"Layer 1.3"'))).map(({ message }) => message);
        expect(messages).toContain('No part of layers is called `#"Layer 1.3"`. Did you mean `#"Layer 1.2"`?');
    });

    it('keep plain names plain', () => {
        expect(['#pole', '.cloth', '#12', '.st0', '#a-b'].map(pickText)).toEqual(['#pole', '.cloth', '#12', '.st0', '#a-b']);
        expect(proposePicks({ ids: ['a b'], classes: ['9x'] }).map(({ label }) => label)).toEqual(['#"a b"', '."9x"']);
    });
});
