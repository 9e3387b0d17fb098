/** A small shop for tests: every name that a test recipe may use, with figures that are easy to reckon with. */
export const shop = `
laser shed { beam co2  power 45 W  spot 0.15 mm  field 600 x 400 mm  top speed 600 mm/s  acceleration 6000 mm/s2 }
board walnut-12 { wood black-walnut  thickness 12 mm +- 0.3 mm  moisture 8 % }
board ash-10 { wood white-ash  thickness 10 mm +- 0.2 mm  moisture 8 % }
veneer maple-06 { wood sugar-maple  thickness 0.6 mm +- 0.02 mm  moisture 8 % }
${coupon('walnut-12', 'shed')}
resin tide-blue { kind slow-epoxy  colour #1f6f8b }
`;

/** @param more squares beyond the usual ones */
export function coupon(sheet: string, laser: string, more = ''): string {
    return `coupon ${sheet} on ${laser} {
  pitch 0.10 mm
  burn 20 % at 400 mm/s gives 0.03 mm
  burn 40 % at 400 mm/s gives 0.10 mm
  burn 60 % at 400 mm/s gives 0.17 mm
  burn 60 % at 300 mm/s gives 0.24 mm
  burn 80 % at 300 mm/s gives 0.34 mm
  burn 80 % at 300 mm/s x 2 gives 0.67 mm
${more}}`;
}

/** A flag on a pole: no symmetry at all. 40 by 30 mm. */
export const flag = `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" viewBox="0 0 40 30">
  <path id="pole" d="M6 2h3v26h-3z"/><path class="cloth" d="M9 3h22l-6 6 6 6h-22z"/></svg>`;

/** A diamond that is its own mirror image. 30 by 30 mm. */
export const diamond = `<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="30mm" viewBox="0 0 30 30">
  <path d="M15 2L28 15L15 28L2 15Z"/></svg>`;

export interface InlayParts {
    readonly head?: string;
    readonly blanks?: string;
    readonly pocket?: string;
    readonly relief?: string;
    readonly inlay?: string;
    readonly after?: string;
}

/** A good inlay recipe, of which a test changes one part. */
export function inlayRecipe(parts: InlayParts = {}): string {
    return `${shop}
recipe tray "Tray" {
  revision 1 make 1 laser shed
  art flag "flag.svg"
  art diamond "diamond.svg"
  ${parts.blanks ?? 'blank tray { of walnut-12 size 200 x 150 mm grain along width } blank bird { of maple-06 size 80 x 70 mm grain along width backing foil }'}
  ${parts.head ?? ''}
  engrave pocket on tray { ${parts.pocket ?? 'art flag depth 0.55 mm air off'} }
  engrave relief on bird { ${parts.relief ?? 'art flag inverse within grown 6 mm mirror depth through air off'} }
  inlay relief into pocket { ${parts.inlay ?? 'clearance 0.15 mm glue wood-glue'} }
  wait 12 h
  peel bird
  ${parts.after ?? 'sand tray { flush then 0.10 mm grits 120, 180, 240 }'}
}`;
}

/** A good filled recipe, of which a test changes one part. */
export function fillRecipe(
    parts: {
        readonly pocket?: string;
        readonly between?: string;
        readonly fill?: string;
        readonly after?: string;
        readonly wood?: string;
    } = {},
): string {
    return `${shop}
recipe coaster "Coaster" {
  revision 1 make 2 laser shed
  art flag "flag.svg"
  blank disc { of ${parts.wood ?? 'ash-10'} size 100 x 100 mm grain along width }
  engrave hollow on disc { ${parts.pocket ?? 'art flag depth 1.2 mm air off'} }
  ${parts.between ?? 'seal disc with shellac { coats 2 } wait 2 h'}
  fill hollow with tide-blue ${parts.fill ?? ''}
  wait 24 h
  ${parts.after ?? 'sand disc { flush then 0.30 mm grits 80, 120, 180 }'}
}`;
}

export const art = { 'flag.svg': flag, 'diamond.svg': diamond };
