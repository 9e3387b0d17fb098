/**
 * Labels as single strokes, drawn for this project in a box four units wide and six high, y downwards:
 * each sign is a list of strokes, each stroke the corners it goes through as pairs of digits "xy".
 */
const signs: Readonly<Record<string, string>> = {
    '0': '10 30 41 45 36 16 05 01 10',
    '1': '11 20 26|16 36',
    '2': '01 10 30 41 42 06 46',
    '3': '01 10 30 41 42 33 13|33 44 45 36 16 05',
    '4': '36 30 04 44',
    '5': '40 00 03 33 44 45 36 16 05',
    '6': '30 10 02 05 16 36 45 44 33 03',
    '7': '00 40 16',
    '8': '13 02 01 10 30 41 42 33 13 04 05 16 36 45 44 33',
    '9': '43 13 02 01 10 30 41 44 36 16',
    '.': '25 26',
    '%': '40 06|00 10 11 01 00|35 45 46 36 35',
    '/': '40 06',
    x: '02 46|42 06',
    m: '06 02|03 12 23 26|23 32 43 46',
    s: '42 02 04 44 46 06',
    W: '00 16 23 36 40',
    J: '40 45 36 16 05',
    '-': '13 33',
    ' ': '',
};

const ADVANCE = 5.5;

/** Polylines (x0, y0, x1, y1, … in mm) of a text whose signs are `height` mm high, its top left corner at x, y. Unknown signs leave a gap. */
export function strokes(text: string, x: number, y: number, height: number): Float64Array[] {
    const unit = height / 6;
    const lines: Float64Array[] = [];
    [...text].forEach((sign, index) => {
        for (const stroke of (signs[sign] ?? '').split('|')) {
            const corners = stroke.split(' ').filter((corner) => corner.length === 2);
            if (corners.length < 2) continue;
            lines.push(
                Float64Array.from(
                    corners.flatMap((corner) => [x + (index * ADVANCE + Number(corner[0])) * unit, y + Number(corner[1]) * unit]),
                ),
            );
        }
    });
    return lines;
}

/** Width (mm) of a text of that height. */
export function textWidth(text: string, height: number): number {
    const count = [...text].length;
    return count === 0 ? 0 : ((count * ADVANCE - (ADVANCE - 4)) * height) / 6;
}
