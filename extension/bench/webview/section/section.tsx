import { showLength } from '../../../../shared/quantity/show';
import type { BlankView, SectionView, SpanView, WrittenView } from '../../../../shared/view/bench-view';
import { url } from '../ids';
import type { Placing, Size } from '../picture/zoom';
import { wordsWidth } from '../words-width';
import { DepthGrip } from './depth-grip';
import { type Dimension, dimensionsOf } from './section-dimensions';
import { exaggeration, type SectionScale, sectionScale } from './section-scale';

interface SectionProps {
    readonly blank: BlankView;
    readonly section: SectionView;
    /** The same cut in every frame, which fixes the scale. */
    readonly all: readonly SectionView[];
    readonly placing: Placing;
    readonly screen: Size;
    /** The depth that the step just done asks for, where it can be changed. */
    readonly depth?: { readonly name: string; readonly written: WrittenView; readonly textVersion: number } | undefined;
}

/** A cut across the piece along the section line, under the picture and in line with it. */
export function Section({ blank, section, all, placing, screen, depth }: SectionProps) {
    const scale = sectionScale(all, placing.scale);
    const x = (mm: number) => placing.shiftX + mm * placing.scale;
    const left = Math.max(x(0), -20);
    const right = Math.min(x(section.width), screen.width + 20);
    const seen = section.spans.filter((span) => x(span.to) > left - 1 && x(span.from) < right + 1);
    const dimensions = dimensionsOf(section, blank.unit);
    const dug = dimensions.find(({ id }) => id === 'depth');
    const thick = showLength(section.face, blank.unit);
    const title = `Section ${showLength(section.y, blank.unit)} from the top edge, ${exaggeration(scale.times)}`;
    return (
        <figure class="section">
            <figcaption>
                {title}
                {scale.breakAt === undefined ? '' : '; the wood below the break line is left out'}
            </figcaption>
            <svg
                height={scale.height}
                role={depth === undefined ? 'img' : undefined}
                aria-roledescription="picture"
                aria-label={`${title}. ${[`${thick} thick`, ...dimensions.map(({ text }) => text)].join(', ')}.`}
            >
                {seen.map((span, index) => (
                    <Span key={`${span.kind} ${index}`} span={span} scale={scale} x={x} grain={blank.grain} />
                ))}
                <path class="profile" d={profile(seen, scale, x)} />
                {section.face < section.top - 5e-4 && (
                    <g class="first-face">
                        <path d={`M${left} ${scale.y(section.top)}H${right}`} />
                        <text x={Math.min(right, screen.width - 6)} y={scale.y(section.top) - 4}>
                            face before sanding
                        </text>
                    </g>
                )}
                {seen.map((span, index) => (
                    <Band key={`${span.kind} ${index}`} span={span} scale={scale} x={x} />
                ))}
                {scale.breakAt !== undefined && <BreakLine left={left} right={right} y={scale.breakAt} />}
                <Dimensions dimensions={dimensions} scale={scale} x={x} screen={screen} />
                {depth !== undefined && dug !== undefined && (
                    <DepthGrip
                        {...depth}
                        x={x(dug.x)}
                        y={scale.y(dug.from)}
                        scale={scale.times * placing.scale}
                        deepest={section.top}
                    />
                )}
                <Thickness section={section} text={thick} scale={scale} at={Math.max(left - 16, 20)} />
            </svg>
            <Key section={section} />
        </figure>
    );
}

interface SpanProps {
    readonly span: SpanView;
    readonly scale: SectionScale;
    readonly x: (mm: number) => number;
    readonly grain?: BlankView['grain'];
}

function Span({ span, scale, x, grain }: SpanProps) {
    const top = scale.y(span.top);
    const height = Math.max(scale.y(span.bottom) - top, 1.5);
    const from = x(span.from);
    const width = Math.max(x(span.to) - from, 0.75);
    const { kind } = span;
    const hatch = hatchOf(kind, grain);
    return (
        <g class={`span ${kind}`}>
            <title>{span.label}</title>
            <rect x={from} y={top} width={width} height={height} fill={span.colour} />
            {hatch !== undefined && <rect x={from} y={top} width={width} height={height} fill={url(hatch)} />}
            {kind !== 'wood' && <rect class="outline" x={from} y={top} width={width} height={height} />}
        </g>
    );
}

/** The upper edge of the wood as one line: what the laser and the sander have left. */
function profile(spans: readonly SpanView[], scale: SectionScale, x: (mm: number) => number): string {
    let path = '';
    let end: number | undefined;
    for (const { kind, from, to, top } of spans) {
        if (kind !== 'wood') continue;
        const joined = end !== undefined && Math.abs(from - end) < 1e-6;
        path += `${joined ? 'L' : 'M'}${x(from)} ${scale.y(top)}H${x(to)}`;
        end = to;
    }
    return path;
}

/** The section is cut along the width: grain along the width lies in it, other grain is cut across. */
function hatchOf(kind: SpanView['kind'], grain: BlankView['grain']): string | undefined {
    if (kind === 'wood') return grain === 'height' ? 'hatch-end-grain' : 'hatch-long-grain';
    if (kind === 'inlay') return 'hatch-long-grain';
    return kind === 'resin' ? 'hatch-resin' : undefined;
}

/** Where the top of what lies here may be, by its tolerance. */
function Band({ span, scale, x }: SpanProps) {
    if (span.band === undefined) return null;
    const top = scale.y(span.band.high);
    const bottom = scale.y(span.band.low);
    if (bottom - top < 2) return null;
    const from = x(span.from);
    const to = x(span.to);
    return (
        <g class="band">
            <rect x={from} y={top} width={Math.max(to - from, 0.75)} height={bottom - top} fill={url('hatch-band')} />
            <path d={`M${from} ${top}H${to}M${from} ${bottom}H${to}`} />
        </g>
    );
}

function BreakLine({ left, right, y }: { left: number; right: number; y: number }) {
    let path = `M${left} ${y + 5}`;
    for (let at = left, up = true; at < right; at += 12, up = !up) path += `q6 ${up ? -5 : 5} 12 0`;
    return (
        <svg
            class="break"
            aria-hidden="true"
            x={left}
            y={y - 10}
            width={Math.max(right - left, 0)}
            height="24"
            viewBox={`${left} ${y - 10} ${Math.max(right - left, 1)} 24`}
        >
            <path class="gap" d={path} />
            <path class="wave" d={path} transform="translate(0 -3)" />
            <path class="wave" d={path} transform="translate(0 3)" />
        </svg>
    );
}

/** Arrows side by side in the dug place, each led up to a line of text of its own. */
function Dimensions({ dimensions, scale, x, screen }: DimensionsProps) {
    return (
        <g class="dimension">
            {dimensions.map(({ id, x: at, from, to, text }, index) => {
                const first = Math.min(Math.max(x(at) - 9 * (dimensions.length - 1), 60), screen.width - 190);
                const spot = first + 18 * index;
                const row = 13 + 14 * index;
                const [top, bottom] = [scale.y(to), scale.y(from)];
                const arrow = arrowBetween(spot, top, bottom);
                const start = Math.max(2, Math.min(spot + 4, screen.width - wordsWidth(text) - 2));
                return (
                    <g key={id}>
                        <path class="under" d={arrow} />
                        <path class="leader" d={`M${spot} ${row - 8}V${top}`} />
                        <path d={arrow} />
                        <text class="start" x={start} y={row}>
                            {text}
                        </text>
                    </g>
                );
            })}
        </g>
    );
}

/** Arrows between two heights; where there is no room for them, from outside, as on any drawing. */
function arrowBetween(x: number, top: number, bottom: number): string {
    if (bottom - top >= 13) return `M${x} ${top}V${bottom}M${x - 3} ${top + 5}l3-5l3 5M${x - 3} ${bottom - 5}l3 5l3-5`;
    return `M${x} ${top - 9}V${top}M${x - 3} ${top - 4}l3 4l3-4M${x} ${bottom + 9}V${bottom}M${x - 3} ${bottom + 4}l3-4l3 4`;
}

interface DimensionsProps {
    readonly dimensions: readonly Dimension[];
    readonly scale: SectionScale;
    readonly x: (mm: number) => number;
    readonly screen: Size;
}

function Thickness({ section, text, scale, at }: { section: SectionView; text: string; scale: SectionScale; at: number }) {
    const [top, bottom] = [scale.y(section.face), scale.y(0)];
    return (
        <g class="dimension">
            <path d={`M${at} ${top}V${bottom}M${at - 4} ${top}h8M${at - 4} ${bottom}h8`} />
            <text transform={`translate(${at - 6} ${(top + bottom) / 2}) rotate(-90)`}>{text}</text>
        </g>
    );
}

/** What is what in the section. */
function Key({ section }: { section: SectionView }) {
    const kinds = new Map<string, SpanView>();
    for (const span of section.spans) if (!kinds.has(`${span.kind} ${span.label}`)) kinds.set(`${span.kind} ${span.label}`, span);
    const banded = section.spans.some(({ band }) => band !== undefined);
    return (
        <ul class="key">
            {[...kinds].map(([key, span]) => (
                <li key={key}>
                    <svg width="22" height="12" aria-hidden="true" focusable="false">
                        <rect width="22" height="12" fill={span.colour} />
                        <rect
                            width="22"
                            height="12"
                            fill={hatchOf(span.kind, undefined) === undefined ? 'none' : url(hatchOf(span.kind, undefined)!)}
                        />
                        <rect class="outline" width="22" height="12" fill="none" />
                    </svg>
                    {span.label}
                </li>
            ))}
            {banded && (
                <li key="band">
                    <svg class="band" width="22" height="12" aria-hidden="true" focusable="false">
                        <rect width="22" height="12" fill={url('hatch-band')} />
                    </svg>
                    tolerance of the floor
                </li>
            )}
        </ul>
    );
}
