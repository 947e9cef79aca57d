import { decodeEntries } from './screen-conversion.js';

export const vertexShader = `#version 300 es
const vec2 corners[3] = vec2[3](vec2(-1.0, -1.0), vec2(3.0, -1.0), vec2(-1.0, 3.0));
void main() { gl_Position = vec4(corners[gl_VertexID], 0.0, 1.0); }`;

/**
 * One picture through a table. Tetrahedral interpolation as in lut/interpolate.ts: from the cell's dark corner along the
 * largest fraction, then the middle one, then the smallest. Marks as in preview/clipping-marks.ts: slanted lines where
 * a channel newly stands at white, staggered dots where all newly stand at black.
 */
export const fragmentShader = `#version 300 es
precision highp float;
precision highp sampler3D;
uniform sampler2D still;
uniform sampler3D table;
uniform sampler2D decodeBefore;
uniform sampler2D decodeAfter;
uniform vec4 picture;      // x, y from the top, width, height in canvas pixels
uniform float canvasHeight;
uniform bvec3 turn;        // transposed, mirrored across, mirrored down
uniform float lod;
uniform int tableSize;     // 0: none
uniform float splitX;
uniform bool marks;
uniform vec4 limits;       // black and white before, black and white after
uniform bool convertBefore;
uniform bool convertAfter;
uniform mat3 matrixBefore;
uniform mat3 matrixAfter;
uniform float bed;
out vec4 colour;

vec3 node(ivec3 at) { return texelFetch(table, at, 0).rgb; }

vec3 throughTable(vec3 code) {
  vec3 place = clamp(code, 0.0, 1.0) * float(tableSize - 1);
  ivec3 cell = min(ivec3(place), ivec3(tableSize - 2));
  vec3 f = place - vec3(cell);
  ivec3 first; ivec3 two; vec3 sorted;
  if (f.r >= f.g && f.r >= f.b) {
    first = ivec3(1, 0, 0);
    if (f.g >= f.b) { two = ivec3(1, 1, 0); sorted = f.rgb; } else { two = ivec3(1, 0, 1); sorted = f.rbg; }
  } else if (f.g >= f.b) {
    first = ivec3(0, 1, 0);
    if (f.r >= f.b) { two = ivec3(1, 1, 0); sorted = f.grb; } else { two = ivec3(0, 1, 1); sorted = f.gbr; }
  } else {
    first = ivec3(0, 0, 1);
    if (f.r >= f.g) { two = ivec3(1, 0, 1); sorted = f.brg; } else { two = ivec3(0, 1, 1); sorted = f.bgr; }
  }
  return node(cell) * (1.0 - sorted.x) + node(cell + first) * (sorted.x - sorted.y)
    + node(cell + two) * (sorted.y - sorted.z) + node(cell + ivec3(1)) * sorted.z;
}

float light(sampler2D decode, float code) {
  float at = clamp(code, 0.0, 1.0) * float(${decodeEntries - 1});
  int low = min(int(at), ${decodeEntries - 2});
  return mix(texelFetch(decode, ivec2(low, 0), 0).r, texelFetch(decode, ivec2(low + 1, 0), 0).r, at - float(low));
}

vec3 toScreen(vec3 code, sampler2D decode, mat3 matrix) {
  vec3 linear = clamp(vec3(light(decode, code.r), light(decode, code.g), light(decode, code.b)) * matrix, 0.0, 1.0);
  return mix(12.92 * linear, 1.055 * pow(linear, vec3(1.0 / 2.4)) - 0.055, step(0.0031308, linear));
}

void main() {
  vec2 at = vec2(gl_FragCoord.x, canvasHeight - gl_FragCoord.y);
  vec2 seen = (at - picture.xy) / picture.zw;
  if (any(lessThan(seen, vec2(0.0))) || any(greaterThanEqual(seen, vec2(1.0)))) { colour = vec4(vec3(bed), 1.0); return; }
  vec2 place = turn.x ? seen.yx : seen;
  if (turn.y) place.x = 1.0 - place.x;
  if (turn.z) place.y = 1.0 - place.y;
  vec4 taken = textureLod(still, place, lod);
  vec3 before = taken.rgb;
  bool recorded = tableSize == 0 || at.x < splitX;
  vec3 after = recorded ? before : throughTable(before);
  vec3 shown = after;
  if (recorded) { if (convertBefore) shown = toScreen(before, decodeBefore, matrixBefore); }
  else if (convertAfter) shown = toScreen(after, decodeAfter, matrixAfter);
  shown = mix(vec3(bed), shown, taken.a);
  if (marks && !recorded && taken.a > 0.0) {
    bvec3 newlyWhite = bvec3(
      after.r >= limits.w && before.r < limits.y, after.g >= limits.w && before.g < limits.y,
      after.b >= limits.w && before.b < limits.y);
    bool wasBlack = all(lessThanEqual(before, vec3(limits.x)));
    bool isBlack = all(lessThanEqual(after, vec3(limits.z)));
    ivec2 pixel = ivec2(at);
    if (any(newlyWhite)) shown = (pixel.x + pixel.y) % 8 < 3 ? vec3(0.5, 0.05, 0.35) : mix(shown, vec3(1.0), 0.5);
    else if (isBlack && !wasBlack)
      shown = pixel.y % 6 < 2 && (pixel.x + (pixel.y % 12 < 6 ? 0 : 3)) % 6 < 2 ? vec3(0.45, 0.86, 0.9) : vec3(0.0);
  }
  colour = vec4(shown, 1.0);
}`;
