import { showNumber } from '../../shared/quantity/show';
import { quoted, quotedPath } from '../../shared/recipe/quoted';
import type { Technique } from '../../shared/view/techniques';
import { inlaySteps } from './inlay-steps';
import { block, checked, extentWords, waiting } from './lines';
import type { Start } from './start';

/** A recipe to begin with: complete, in an order that works, with figures that fit the stock. */
export function startText(start: Start): string {
    const uses = start.uses.map((path) => `use ${quotedPath(path)}`);
    const head = [
        `recipe ${start.name} ${quoted(start.title)} {`,
        '  issue 1',
        '  make 1',
        `  laser ${start.laser}`,
        '',
        ...artLines(start),
        '',
        ...block(`blank piece`, [`of ${start.board.name}`, `size ${extentWords(start.size)}`, 'grain along width']),
    ];
    const recipe = [...head, ...(start.technique === 'inlay' ? [] : ['']), ...steps(start), '}'];
    const remarks = [...about[start.technique], ...start.remarks].map((line) => `// ${line}`);
    return `${[...(uses.length > 0 ? [uses.join('\n')] : []), ...start.stock, [...remarks, ...recipe].join('\n')].join('\n\n')}\n`;
}

const about: Readonly<Record<Technique, readonly string[]>> = {
    engraving: ['Plain engraving: colour, not depth. Sanded before, since a mere colour would come off again.'],
    filled: ['Filled engraving: a pocket, sealed, flooded with tinted resin and sanded back to the wood.'],
    inlay: ['Reverse inlay: a pocket in the board, and its half of veneer, inverse and mirrored, turned over into it.'],
    picture: ['A picture in greys: dots on the scan lines, the closer the darker.'],
};

function artLines({ technique, art }: Start): string[] {
    const inside = [
        ...(art.sized ? [`width ${showNumber(art.page.width, 1)} mm`] : []),
        ...(technique === 'picture' ? ['dither floyd-steinberg'] : []),
    ];
    const head = `art ${art.name} ${quotedPath(art.path)}`;
    return inside.length === 0 ? [`  ${head}`] : block(head, inside);
}

function steps(start: Start): string[] {
    switch (start.technique) {
        case 'engraving':
            return toned(start, ['tone 80 %', ...(start.art.bitmap ? [] : ['outline 1'])]);
        case 'picture':
            return toned(start, ['tone 90 %', `pitch ${picturePitch} mm`]);
        case 'filled':
            return filled(start);
        case 'inlay':
            return [...inlaySteps(start), ...finished(start)];
    }
}

/** mm from dot to dot: close enough that the eye takes them together. @commonPractice */
const picturePitch = 0.1;

function toned(start: Start, wish: readonly string[]): string[] {
    return [
        ...block('sand piece', ['take 0.1 mm', 'grits 120, 180, 240']),
        ...block('engrave drawing on piece', [`art ${start.art.name}`, ...wish]),
        ...finished(start),
    ];
}

/** mm that is sanded off the face once it is flush: a pocket that is shallower by as much still holds its fill. */
const takenByFlush = 0.1;

/** mm: deep enough for resin to hold, and shallow enough for the board and for one pour. */
const usualPocket = 0.9;

function filled(start: Start): string[] {
    const { board, sealer, resin } = start;
    const deepest = Math.min((board.thinnest ?? usualPocket * 3) / 3, (resin.deepestPour ?? usualPocket) * 0.9, usualPocket);
    const depth = Math.max(0.4, deepest);
    return [
        ...block('engrave pocket on piece', [`art ${start.art.name}`, `depth ${showNumber(depth, 2)} mm`]),
        ...checked(depth, takenByFlush),
        ...(board.bleeds ? [`  seal piece with ${sealer.name}`, ...waiting(sealer.dry, 'the sealer dries')] : []),
        ...block(`fill pocket with ${resin.name}`, ['overfill 10 %']),
        ...waiting(resin.cure, 'the resin cures'),
        ...block('sand piece', ['flush then 0.1 mm', 'grits 120, 180, 240']),
        ...finished(start),
    ];
}

function finished({ finish }: Start): string[] {
    return block(`finish piece with ${finish.name}`, ['coats 2']);
}
