import type { LookView } from '../../../../shared/view/round-view';
import { heart, poreStrength, ringWidth, seedOf } from '../picture/wood-figure';

/** What the shader asks of a look. */
export function uniformsOf({ gloss, grain, kind }: LookView) {
    const [across, below] = heart[grain?.sawn ?? 'flat'];
    return {
        gloss: { value: gloss },
        along: { value: grain === undefined ? 0 : grain.along === 'width' ? 1 : 2 },
        heart: { value: [across, below] },
        ring: { value: ringWidth },
        pores: { value: poreStrength[grain?.pores ?? 'diffuse'] },
        seed: { value: seedOf(grain?.name ?? kind) },
    };
}

export const vertexHead = `
attribute vec3 place;
varying vec3 vPlace;
varying vec3 vFacing;
`;

export const vertexBody = `
vPlace = place;
vFacing = vec3(normal.x, normal.z, normal.y);
`;

export const fragmentHead = `
uniform float gloss;
uniform int along;
uniform vec2 heart;
uniform float ring;
uniform float pores;
uniform float seed;
varying vec3 vPlace;
varying vec3 vFacing;

float hash3(vec3 p) {
    p = fract(p * 0.3183099 + 0.1 + seed * 0.013);
    p *= 17.0;
    return fract(p.x * p.y * p.z * (p.x + p.y + p.z));
}

float noise3(vec3 p) {
    vec3 i = floor(p);
    vec3 f = fract(p);
    f = f * f * (3.0 - 2.0 * f);
    return mix(
        mix(mix(hash3(i), hash3(i + vec3(1, 0, 0)), f.x), mix(hash3(i + vec3(0, 1, 0)), hash3(i + vec3(1, 1, 0)), f.x), f.y),
        mix(mix(hash3(i + vec3(0, 0, 1)), hash3(i + vec3(1, 0, 1)), f.x), mix(hash3(i + vec3(0, 1, 1)), hash3(i + vec3(1, 1, 1)), f.x), f.y),
        f.z);
}

// Rings are rings of a log that runs along the grain: lines on the faces, arcs on the ends.
float grainShade() {
    vec3 p = along == 1 ? vPlace.xyz : vec3(vPlace.y, vPlace.x, vPlace.z);
    float ends = abs(along == 1 ? vFacing.x : vFacing.y);
    float bow = 14.0 * sin(p.x / 170.0 + seed) + 5.0 * sin(p.x / 61.0 + seed * 2.0);
    vec2 off = vec2(p.y - 60.0 * fract(seed) - heart.x - bow * 0.25, p.z - heart.y + 0.022 * p.x);
    float uneven = 1.6 * noise3(vec3(p.x / 70.0, p.y / 9.0, p.z / 9.0)) + 0.25 * noise3(vec3(p.x / 14.0, p.y / 1.2, p.z / 1.2));
    float years = (length(off) + uneven) / ring;
    float coarse = fwidth(years);
    float part = fract(years);
    float late = smoothstep(0.35, 0.93, part) * (1.0 - smoothstep(0.93, 1.0, part));
    float clear = clamp(1.2 - coarse * 1.6, 0.0, 1.0);
    float year = mix(0.36, late, clear);
    vec3 fine = ends > 0.5 ? vec3(p.x / 4.0, p.y / 0.22, p.z / 0.22) : vec3(p.x / 5.0, p.y / 0.16, p.z / 0.16);
    float fineness = clamp(1.3 - fwidth(p.y / 0.16) * 0.9, 0.0, 1.0);
    float pore = smoothstep(0.62, 0.9, noise3(fine)) * fineness * (1.2 - 0.7 * late);
    float broad = noise3(vec3(p.x / 120.0, p.y / 22.0, p.z / 22.0)) - 0.5;
    return (1.0 - 0.27 * (year - 0.3) + 0.12 * broad) * (1.0 - pores * pore) * mix(1.0, 0.74, smoothstep(0.6, 0.9, ends));
}

// Soot lies unevenly, along the grain where there is one.
float sootShade() {
    float coarse = noise3(vPlace / vec3(1.8, 1.8, 0.7));
    float fine = noise3(vPlace / 0.22);
    float fineness = clamp(1.3 - fwidth(vPlace.x / 0.22), 0.0, 1.0);
    return 0.78 + 0.26 * coarse + 0.24 * (fine - 0.5) * fineness;
}

// A workshop above: dim walls, a bright window band and a lamp overhead.
vec3 room(vec3 way) {
    float up = way.y;
    float window = smoothstep(0.35, 0.5, up) * (1.0 - smoothstep(0.72, 0.84, up)) * smoothstep(-0.3, 0.5, -way.z);
    float lamp = smoothstep(0.9, 0.97, up);
    return vec3(0.08, 0.085, 0.09) + 0.16 * smoothstep(-0.1, 0.9, up) + vec3(0.95, 0.98, 1.0) * 0.7 * window + vec3(1.0, 0.96, 0.88) * 0.25 * lamp;
}
`;

const shades: Partial<Record<LookView['kind'], string>> = {
    wood: 'if (along > 0) diffuseColor.rgb *= grainShade();',
    char: 'diffuseColor.rgb *= sootShade();',
    metal: 'diffuseColor.rgb *= 0.9 + 0.5 * (noise3(vPlace / 0.35) - 0.3) * clamp(1.6 - fwidth(vPlace.x / 0.35), 0.25, 1.0);',
    tape: 'diffuseColor.rgb *= 0.97 + 0.06 * noise3(vec3(vPlace.x / 6.0, vPlace.y / 0.5, 1.0));',
};

export function shadeOf({ kind }: LookView): string {
    return shades[kind] ?? '';
}

/** What a glossy surface mirrors of the room: more at a flat angle (Schlick), of metal in its own colour, flake by flake. */
export function mirrorOf({ kind }: LookView): string {
    const head = kind === 'metal' || kind === 'foil' ? 'diffuseColor.rgb * 2.2' : 'vec3(0.045)';
    // Flakes of powder lie a little askew, so that some of them catch the window from wherever one looks.
    const flakes =
        kind === 'metal'
            ? `
vec3 cell = floor(vPlace / 0.3);
vec3 askew = 0.55 * (vec3(hash3(cell), hash3(cell + 7.0), hash3(cell + 19.0)) - 0.5);
float close = clamp(1.7 - fwidth(vPlace.x / 0.3), 0.0, 1.0);
facing = normalize(normal + askew * close);
float glint = smoothstep(0.86, 1.0, hash3(cell + 31.0)) * mix(0.35, 1.0, close);
outgoingLight += diffuseColor.rgb * (0.22 + 0.9 * glint);
`
            : '';
    return `
vec3 looking = normalize(vViewPosition);
vec3 facing = normal;
${flakes}
vec3 base = ${head};
vec3 mirrored = room(inverseTransformDirection(reflect(-looking, facing), viewMatrix));
outgoingLight += gloss * gloss * mirrored * (base + (1.0 - base) * pow(1.0 - clamp(dot(looking, facing), 0.0, 1.0), 5.0));
`;
}
