/** Scan lines, order and time of 300 x 200 mm of intricate art. Run by tests/speed/run.mjs. */
import { Clipper64, ClipType, FillRule, type Path64, type Paths64 } from 'clipper2-ts';
import type { Region } from '../../shared/geometry/region';
import { rs274 } from '../../shared/sheets/rs274';
import { type Hatch, hatch } from '../../shared/toolpath/hatch';
import { travelLength } from '../../shared/toolpath/order';
import { outlinePaths } from '../../shared/toolpath/outline';
import { pathOfRing } from '../../shared/toolpath/path';
import { timeOfJob } from '../../shared/toolpath/time';
import { points, reeds } from './art';
import { median, report } from './measure';

const motion = { topSpeed: 600, acceleration: 6000 };

/** The same scan lines cut by a polygon library as open paths: the peer. Level lines only. */
function clipped(region: Region, { first, pitch, lines }: Hatch): number {
    const units = 10_000;
    const clipper = new Clipper64();
    clipper.addClip(
        region.rings.map(
            (ring): Path64 =>
                Array.from({ length: ring.length / 2 }, (_, i) => ({
                    x: Math.round(ring[2 * i]! * units),
                    y: Math.round(ring[2 * i + 1]! * units),
                })),
        ),
    );
    const scan: Paths64 = Array.from({ length: lines }, (_, line) => {
        const y = Math.round((first + line * pitch) * units);
        return [
            { x: -units, y },
            { x: 301 * units, y },
        ];
    });
    clipper.addOpenSubject(scan);
    const closed: Paths64 = [];
    const open: Paths64 = [];
    clipper.execute(ClipType.Intersection, FillRule.NonZero, closed, open);
    return open.length;
}

for (const columns of [20, 60, 120]) {
    const region = reeds(columns);
    console.log(`\n${region.rings.length} rings, ${points(region)} points`);
    for (const [pitch, angle] of [
        [0.1, 0],
        [0.1, 0.6],
        [0.01, 0],
    ] as const) {
        const lines = hatch(region, pitch, angle)!;
        const time = median(() => hatch(region, pitch, angle));
        report(
            `hatch ${pitch} mm at ${angle} rad`,
            time,
            `${lines.segments} segments`,
            `${(lines.segments / time / 1000).toFixed(1)} M segments/s`,
        );
        if (pitch === 0.1 && angle === 0 && columns < 30) {
            const peer = median(() => clipped(region, lines), 1);
            report(
                '  the same by clipper2-ts, open paths',
                peer,
                `${clipped(region, lines)} segments`,
                `${(peer / time).toFixed(0)} times as long`,
            );
        }
    }
    const work = {
        kind: 'area',
        name: 'reeds',
        hatch: hatch(region, 0.1, 0)!,
        bothWays: true,
        power: 20,
        speed: 300,
        passes: 1,
    } as const;
    report(
        'time of the area',
        median(() => timeOfJob({ work: [work], motion })),
    );
    const paths = outlinePaths(region);
    const fileOrder = travelLength(region.rings.map((ring) => pathOfRing(ring)));
    report(
        'outlines, inside out, short way',
        median(() => outlinePaths(region), 3),
        `${(travelLength(paths) / fileOrder).toFixed(2)} of the file's travel`,
    );
    report(
        'time of the outlines',
        median(() => timeOfJob({ work: [{ ...work, kind: 'path', paths }], motion })),
    );
    const options = { comments: [], fullPower: 45, origin: 'X 0 Y 0 is the top left corner' };
    const result = rs274({ work: [work], motion }, options);
    const size = 'text' in result ? result.text.length : 0;
    report(
        'machine file of the area',
        median(() => rs274({ work: [work], motion }, options), 3),
        `${(size / 1e6).toFixed(1)} MB`,
    );
}
