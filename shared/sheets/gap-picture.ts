import { encode } from 'fast-png';
import { gapColour, touchColour } from '../bench/gap-scale';
import type { Pressed } from '../bench/virtual-press';
import { toBase64 } from '../quantity/base64';

/** The gap map as a picture that needs nothing from anywhere else: a PNG as data address. Clear where no veneer lies. */
export function gapPicture({ gap, touching, cells }: Pressed): string {
    const data = new Uint8Array(gap.length * 4);
    for (const [at, mm] of gap.entries()) {
        const touches = touching[at] === 1;
        if (Number.isNaN(mm) && !touches) continue;
        const colour = touches ? touchColour : gapColour(mm);
        for (let k = 0; k < 3; k++) data[at * 4 + k] = Number.parseInt(colour.slice(1 + 2 * k, 3 + 2 * k), 16);
        data[at * 4 + 3] = 255;
    }
    const png = encode({ width: cells.columns, height: cells.rows, data, channels: 4 });
    return `data:image/png;base64,${toBase64(png)}`;
}
