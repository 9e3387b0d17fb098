import { describe, expect, it } from 'vitest';
import { open, services, start } from './services';

const text = `laser shed { beam co2  power 45 W  spot 0.15 mm }
board walnut-12 { wood black-walnut  thickness 12 mm }
coupon walnut-12 on shed {
  pitch 0.10 mm
  burnt 2026-01-10
  burn 20 % at 400 mm/s gives 0.03 mm
  burn 40 % at 400 mm/s gives 0.10 mm
  burn 60 % at 400 mm/s gives 0.17 mm
  burn 60 % at 300 mm/s gives 0.24 mm
  burn 80 % at 300 mm/s gives 0.34 mm
  burn 80 % at 300 mm/s x 2 gives 0.67 mm
}
recipe tray {
  issue 3
  laser shed
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  engrave pocket on tray { circle 80 mm  depth 0.5 mm  pitch 0.1 mm  air off }
  engrave rim on tray { circle 90 mm  depth 0.5 mm  pitch 0.1 mm  air off }
}
run tray 2026-01-05 { issue 3  laser shed  pocket of walnut-12 80 % at 387 mm/s x 2 pitch 0.1 mm depth 0.51 mm }
run tray 2026-02-01 {
  issue 3
  laser shed
  pocket of walnut-12 80 % at 387 mm/s x 2 pitch 0.1 mm depth 0.45 mm
  rim of walnut-12 80 % at 387 mm/s x 2 pitch 0.1 mm planned 0.50 mm +- 0.04 mm depth 0.47 mm
}
run tray 2026-02-08 { issue 3  laser shed  pocket of walnut-12 80 % at 387 mm/s x 2 pitch 0.1 mm depth 0.44 mm }
run tray 2026-02-15 { issue 3  laser shed  pocket of walnut-12 80 % at 387 mm/s x 2 }
`;

/** What the editor shows at the first place of these words behind another. */
async function hover(at: string, behind: string): Promise<string> {
    await start();
    const document = await open(text);
    const shown = await services.lsp.HoverProvider?.getHoverContent(document, {
        textDocument: { uri: document.uri.toString() },
        position: document.textDocument.positionAt(text.indexOf(at, text.indexOf(behind)) + 1),
    });
    return (shown?.contents as { value: string } | undefined)?.value ?? '';
}

describe('a run under the cursor', () => {
    it('tells each line beside what was to be expected then, and what all runs say of the power', async () => {
        const said = await hover('2026-02-01', 'run tray 2026-02-01');
        expect(said).toMatch(/- pocket: 0\.45 mm deep, by its settings 0\.(49|5|51)\d* mm ± 0\.\d+ mm \((8|9)\d %\)\n/);
        expect(said).toContain('- rim: 0.47 mm deep, planned 0.5 mm ± 0.04 mm (94 %)');
        expect(said).toMatch(
            /Power of the laser:\n\n- walnut-12 on shed: 2 days of runs since 2026-01-10 \(the coupon was burnt\), \d+ % of the coupon’s power in the mean .*: too few to tell a drift/,
        );
        expect(await hover('run', 'run tray 2026-02-01')).toContain('- rim: 0.47 mm deep');
    });
    it('in a line tells that one, and a later run by what the earlier have taught', async () => {
        const line = await hover('387', 'rim of');
        expect(line).toContain('0.47 mm deep, planned');
        expect(line).not.toContain('0.45 mm deep');
        const expected = (said: string) => Number(/by its settings (0\.\d+) mm/.exec(said)![1]);
        const later = expected(await hover('387', 'run tray 2026-02-08'));
        expect(later).toBeLessThan(expected(await hover('387', 'run tray 2026-02-01')) - 0.02);
    });
    it('says where what was known then no longer is, and nothing of a run without a depth', async () => {
        expect(await hover('387', 'run tray 2026-01-05')).toContain('0.51 mm deep; coupon, laser or wood have changed since');
        expect(await hover('2026-02-15', 'run tray 2026-02-15')).not.toContain('deep');
    });
});
