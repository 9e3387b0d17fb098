import { describe, expect, it } from 'vitest';
import { memoryWorkshop } from '../kit/memory-workshop';
import { art, shop } from '../kit/shop';

const base = `recipe tray {
  laser shed
  art flag "flag.svg"
  blank lid { of walnut-12  size 100 x 80 mm  grain along width }
  engrave pocket on lid {
    art flag
    depth 3 mm
    air on
  }
  wait 1 h
}
`;

/** Findings of one recipe of a text, each with the words it stands on. */
async function said(variants: string, rule: string) {
    const text = `${shop}${base}${variants}`;
    const kit = await memoryWorkshop(art);
    const document = await kit.open(text, 'all.kerf');
    const findings = (await kit.workshop.tradeFindings(document)) ?? [];
    const start = text.indexOf(base) + base.length;
    return findings
        .filter((finding) => finding.rule === rule)
        .map(({ where, related, fixes }) => ({
            inVariant: where.offset >= start,
            on: text.slice(where.offset, where.offset + where.length),
            beside: related.map((each) => text.slice(each.where.offset, each.where.offset + each.where.length)),
            changes: fixes.flatMap(({ changes }) => changes.map((change) => JSON.stringify(change))),
        }));
}

describe('findings of a base in its variants', () => {
    it('stand at the name of the base, with the base’s own line beside them, and no fix changes the base', async () => {
        const [own, inherited] = await said('recipe v based on tray { }', 'air-while-engraving');
        expect(own).toMatchObject({ inVariant: false });
        expect(own!.changes.length).toBeGreaterThan(0);
        expect(inherited).toMatchObject({ inVariant: true, on: 'tray', changes: [] });
        expect(inherited!.beside[0]).toBe('air on');
    });

    it('a line that is added is added in the variant, where one step of the base is meant and no other', async () => {
        const filled = (sanding: string): string =>
            `recipe dish { laser shed art flag "flag.svg" blank disc { of walnut-12 size 100 x 100 mm grain along width }
             engrave hollow on disc { art flag depth 1 mm air off } fill hollow with tide-blue wait 24 h ${sanding} }
             recipe small based on dish { blank disc { size 90 x 90 mm } }\n`;
        const [, one] = await said(filled('sand disc { grits 120 }'), 'left-proud');
        expect(one).toMatchObject({ inVariant: true, changes: [expect.stringContaining('"statement":"sand disc { flush }"')] });
        const [, two] = await said(filled('sand disc { grits 120 } sand disc { grits 180 }'), 'left-proud');
        expect(two).toMatchObject({ changes: [] });
        const [own, none] = await said(filled(''), 'left-proud');
        expect([own!.changes.length, none!.changes.length]).toEqual([1, 0]);
    });

    it('stand at the step that the variant adjusts', async () => {
        const found = await said('recipe v based on tray { engrave pocket { depth 2.5 mm } }', 'air-while-engraving');
        expect(found.map(({ on }) => on)).toEqual(['air on', 'engrave']);
    });

    it('are gone where the variant does otherwise, leaves the step out, or allows it', async () => {
        for (const variant of [
            'recipe v based on tray { engrave pocket { air off } }',
            'recipe v based on tray { without engrave pocket }',
            'recipe v based on tray { engrave pocket { allow air-while-engraving because "a test" } }',
        ]) {
            const found = await said(variant, 'air-while-engraving');
            expect(found.map(({ inVariant }) => inVariant)).toEqual([false]);
        }
    });

    it('an exception of the base that the variant does not need is not said again', async () => {
        const allowing = base
            .replace('air on', 'air on\n    allow air-while-engraving because "no smoke"')
            .replace('recipe tray', 'recipe quiet');
        const found = await said(`${allowing}recipe v based on quiet { engrave pocket { air off } }`, 'allow-silences-nothing');
        expect(found).toEqual([]);
    });

    it('a line that a fix adds to a step of the base is added to the variant instead', async () => {
        const loose = `recipe loose {
  laser shed
  art flag "flag.svg"
  blank half { of maple-06  size 60 x 50 mm }
  engrave relief on half { art flag inverse within rectangle 50 x 40 mm  depth through  air off }
}
`;
        const found = await said(`${loose}recipe v based on loose { }`, 'no-backing');
        expect(found).toHaveLength(2);
        const added = found[1]!.changes.map((change) => JSON.parse(change));
        expect(added[0]).toMatchObject({
            do: 'add',
            block: { offset: `${shop}${base}${loose}`.length },
            statement: 'blank half { backing foil }',
        });
    });
});
