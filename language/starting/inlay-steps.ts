import { showNumber } from '../../shared/quantity/show';
import { block, checked, extentWords, waiting } from './lines';
import type { SizeInMm, Start } from './start';

/** mm of veneer that is to stand proud of the board and is sanded flush. */
const proud = 0.12;
/** mm of bare veneer around the art that is burnt away, and of the blank around that. */
const burntAround = 8;
const heldAround = 7;

/** The sheet of veneer from which the piece of that art is burnt. */
export function veneerBlank({ width, height }: SizeInMm): SizeInMm {
    const more = 2 * (burntAround + heldAround);
    return { width: Math.ceil(width) + more, height: Math.ceil(height) + more };
}

/** The steps of an inlay, and the blank that only an inlay has. */
export function inlaySteps({ art, board, inlay }: Start): string[] {
    if (inlay === undefined) return [];
    const { veneer, glue } = inlay;
    const wanted = veneer.thickness + glue.film - proud;
    const depth = Math.max(0.3, Math.min(wanted, (board.thinnest ?? wanted * 3) / 3));
    const grown = { width: Math.ceil(art.page.width) + 2 * burntAround, height: Math.ceil(art.page.height) + 2 * burntAround };
    return [
        ...block('blank inset', [
            `of ${veneer.name}`,
            `size ${extentWords(veneerBlank(art.page))}`,
            'grain along width',
            'backing foil',
        ]),
        '',
        ...block('engrave pocket on piece', [`art ${art.name}`, `depth ${showNumber(depth, 2)} mm`]),
        // Deeper or shallower by half of what is to stand proud, the veneer still stands proud.
        ...checked(depth, proud / 2),
        ...block('engrave relief on inset', [
            `art ${art.name} inverse within rectangle ${extentWords(grown)}`,
            'mirror',
            'depth through',
        ]),
        ...block('inlay relief into pocket', ['clearance 0.1 mm', `glue ${glue.name}`]),
        ...waiting(glue.cure, 'the glue cures under the press'),
        '  peel inset',
        ...block('sand piece', ['flush then 0.1 mm', 'grits 120, 180, 240']),
    ];
}
