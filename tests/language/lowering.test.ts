import { expect, test } from 'vitest';
import { lowerFile } from '../../language/lowering/lower-file';
import { textFindings } from '../../language/text-findings';
import { open, services } from './services';

const tray = `
laser shed { beam co2 10.6 um  power 45 W  spot 0.15 mm  top speed 600 mm/s  acceleration 6000 mm/s2  field 600 x 400 mm }
board walnut-12 { wood black-walnut  thickness 12 mm +- 0.3 mm  moisture 8 % }
veneer maple-06 { wood sugar-maple  thickness 0.5 .. 0.7 mm }
coupon walnut-12 on shed { pitch 0.10 mm  burn 80 % at 250 mm/s x 2 gives 0.74 mm }
resin tide-blue { kind slow-epoxy  mix 2 : 1 by volume  colour #1f6f8b }
recipe heron-tray "Heron serving tray" {
  revision 3
  make 4
  laser shed
  art heron "art/heron.svg" { width 140 mm }
  blank tray { of walnut-12  size 300 x 200 mm  grain along width }
  blank bird { of maple-06  size 165 x 165 mm  backing foil }
  engrave pocket on tray {
    art heron #wing, .dark at 150, 100 mm turned 90 deg
    depth 1/16 in
    passes 3
    scan across grain
    air off
  }
  engrave relief on bird { art heron inverse within circle 156 mm  mirror  depth through }
  seal tray with shellac { coats 2 }
  fill pocket with tide-blue { overfill 15 % }
  inlay relief into pocket { clearance 0.05 mm  glue wood-glue  marks 3 }
  wait 12 h
  sand tray { flush then 0.10 mm  grits 120, 180, 240 }
  finish tray with drying-oil
}
`;

test('a recipe becomes plain data with everything it names folded in', async () => {
    const document = await open(tray);
    expect(textFindings(document, services)).toEqual([]);
    const [recipe] = lowerFile(document, services);
    expect(recipe).toMatchObject({ name: 'heron-tray', title: 'Heron serving tray', revision: 3, make: 4 });
    expect(recipe?.steps.map(({ kind }) => kind)).toEqual([
        'engrave',
        'engrave',
        'seal',
        'fill',
        'inlay',
        'wait',
        'sand',
        'finish',
    ]);
    expect(recipe?.laser).toMatchObject({ beam: { foilStops: true }, wavelength: { value: 0.0106 }, topSpeed: { value: 600 } });
    expect(recipe?.coupons).toHaveLength(1);
    expect(JSON.parse(JSON.stringify(recipe))).toEqual(recipe);
});
