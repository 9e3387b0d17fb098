import { pageOf } from './frame/page';
import { Problems } from './problems';
import { readHeader } from './raster/header';
import { buildTree } from './xml/tree';
import { readXml } from './xml/xml';

/** How large art is before anybody has said how large it is to be. */
export interface ArtSize {
    /** mm; of art that does not say, its px as CSS px. */
    readonly width: number;
    readonly height: number;
    readonly kind: 'vector' | 'bitmap';
    /** Whether the file itself says its size. */
    readonly physical: boolean;
    /** Pixels of a picture across. */
    readonly columns?: number;
}

/** Characters; a longer file would keep whoever asks waiting. */
const longest = 8_000_000;
const cssPixel = 25.4 / 96; // mm

/** From the header of a picture or the first tag of a drawing; nothing is drawn. Undefined for what says no size, or is neither. */
export function artSize(bytes: Uint8Array, text: () => string | undefined): ArtSize | undefined {
    const header = readHeader(bytes);
    if (header !== undefined) {
        const { columns, rows, density } = header;
        const turned = header.orientation >= 5;
        const [across, down] = turned ? [rows, columns] : [columns, rows];
        if (across === 0 || down === 0) return undefined;
        const width = density === undefined ? across * cssPixel : across / density.x;
        const height = density === undefined ? down * cssPixel : down / density.y;
        return { width, height, kind: 'bitmap', physical: density !== undefined, columns: across };
    }
    const svg = text();
    if (svg === undefined || svg.length > longest) return undefined;
    try {
        const normal = readXml(svg.startsWith('\uFEFF') ? svg.slice(1) : svg, new Problems(svg));
        const page = normal && pageOf(buildTree(normal).root, {});
        if (page === undefined || !(page.width > 0 && page.height > 0)) return undefined;
        return { width: page.width, height: page.height, kind: 'vector', physical: page.physical };
    } catch {
        return undefined;
    }
}
