import type { Region } from '../geometry/region';

/** Hundredths of a millimetre: finer than a screen shows. */
const steps = 100;

/**
 * SVG path data of a region in mm for the picture. Each point is written as its way from the one
 * before, in whole hundredths, so that it takes half the letters and no error adds up.
 */
export function picturePath(region: Region): string {
    const parts: string[] = [];
    for (const ring of region.rings) {
        if (ring.length < 6) continue;
        let x = Math.round(ring[0]! * steps);
        let y = Math.round(ring[1]! * steps);
        parts.push('M', coordinate(x), spaced(coordinate(y)), 'l');
        let first = true;
        for (let i = 2; i + 1 < ring.length; i += 2) {
            const nextX = Math.round(ring[i]! * steps);
            const nextY = Math.round(ring[i + 1]! * steps);
            if (nextX === x && nextY === y) continue;
            const dx = coordinate(nextX - x);
            parts.push(first ? dx : spaced(dx), spaced(coordinate(nextY - y)));
            first = false;
            x = nextX;
            y = nextY;
        }
        // A ring within a hundredth is a point: nothing to be seen, and no path data either.
        if (first) parts.length -= 4;
        else parts.push('z');
    }
    return parts.join('');
}

function coordinate(hundredths: number): string {
    const text = String(hundredths / steps);
    return text.startsWith('0.') ? text.slice(1) : text.startsWith('-0.') ? `-${text.slice(2)}` : text;
}

/** A minus sign parts two numbers by itself. */
function spaced(number: string): string {
    return number.startsWith('-') ? number : ` ${number}`;
}

/** A short name for path data: the same data has the same name in every process, so nobody need be told twice. */
export function pathName(data: string): string {
    let a = 0xdeadbeef;
    let b = 0x41c6ce57;
    for (let i = 0; i < data.length; i++) {
        const unit = data.charCodeAt(i);
        a = Math.imul(a ^ unit, 2654435761);
        b = Math.imul(b ^ unit, 1597334677);
    }
    a = Math.imul(a ^ (a >>> 16), 2246822507) ^ Math.imul(b ^ (b >>> 13), 3266489909);
    b = Math.imul(b ^ (b >>> 16), 2246822507) ^ Math.imul(a ^ (a >>> 13), 3266489909);
    return `${(b >>> 0).toString(36)}-${(a >>> 0).toString(36)}`;
}
