#include "picture/Shading.hpp"

namespace sagitta::viewer {

namespace {

const char* const common = R"(
uniform sampler2D noise;
float grain(vec2 p) { return texture(noise, p).r; }
// A quarter step of dither in 8-bit colour, so that soft ramps show no bands.
vec3 dithered(vec3 c) {
  float d = fract(52.9829189 * fract(dot(gl_FragCoord.xy, vec2(0.06711056, 0.00583715))));
  return c + (d - 0.5) / 255.0;
}
)";

const char* const materials = R"(
// Wood runs along x; y and z fold into one direction so that edges and floors continue the figure.
vec3 wood(vec3 p, vec3 base, out float shine) {
  float across = p.y + 0.61 * p.z;
  float wave = grain(vec2(p.x * 0.0016, across * 0.011)) - 0.5;
  float rings = grain(vec2(p.x * 0.0007 + 0.3, across * 0.045 + wave * 0.35));
  float streak = grain(vec2(p.x * 0.0024, across * 0.31 + wave));
  float pores = smoothstep(0.70, 0.86, grain(vec2(p.x * 0.011, across * 0.83)));
  shine = 0.22 - 0.12 * pores;
  vec3 c = base * (0.66 + 0.62 * rings + 0.36 * (streak - 0.5));
  c += 0.045 * vec3(1.0, 0.58, 0.32) * smoothstep(0.35, 0.8, rings) * (0.3 + streak);
  return max(c, 0.0) * (1.0 - 0.38 * pores);
}
vec3 mother_of_shell(vec3 p, vec3 base, float facing) {
  float a = grain(p.xy * 0.021 + 0.2), b = grain(p.yx * 0.047 + a * 0.3);
  float turn = 6.2831 * (a * 1.6 + b * 0.7) + 3.0 * facing;
  vec3 play = 0.5 + 0.5 * cos(turn + vec3(0.0, 2.1, 4.2));
  return mix(base, base * (0.45 + 0.75 * play), 0.5) * (0.62 + 0.30 * b);
}
)";

}  // namespace

std::string things_vertex() {
  return R"(#version 330 core
layout(location = 0) in vec3 position;
layout(location = 1) in vec3 normal;
layout(location = 2) in vec4 colour;
layout(location = 3) in float finish;
layout(location = 4) in float change;
uniform mat4 view;
uniform float cut;
out vec3 place;
centroid out vec3 facing;
flat out vec4 tint;
flat out float kind;
out float moved;
out float gl_ClipDistance[1];
void main() {
  place = position; facing = normal; tint = colour; kind = finish; moved = change;
  gl_ClipDistance[0] = position.x - cut;
  gl_Position = view * vec4(position, 1.0);
}
)";
}

std::string things_fragment() {
  return std::string("#version 330 core\n") + common + materials + R"(
in vec3 place;
centroid in vec3 facing;
flat in vec4 tint;
flat in float kind;
in float moved;
uniform vec3 eye;
uniform vec3 back;
uniform int parallel_rays;
uniform int cutting;
uniform int shade;          // 0 materials, 1 height, 2 change, 3 remaining
uniform vec2 span;          // lowest and highest of the shade
uniform vec3 low_colour;
uniform vec3 high_colour;
uniform float opacity;
out vec4 colour;
// Bright light is compressed instead of cut off, so that bone, acrylic and maple keep their colours; dark stays as it is.
vec3 shouldered(vec3 c) {
  const float knee = 0.55;
  vec3 over = max(c - knee, 0.0);
  return min(c, knee) + (1.0 - knee) * (1.0 - exp(-over / (1.0 - knee)));
}
float sky(vec3 d) { return mix(0.30, 1.0, smoothstep(-0.3, 0.9, d.z)) + 0.45 * smoothstep(0.90, 0.99, dot(d, normalize(vec3(-0.35, -0.5, 0.8)))); }
void main() {
  vec3 n = normalize(facing);
  vec3 v = parallel_rays == 1 ? back : normalize(eye - place);
  bool cut_face = cutting == 1 && !gl_FrontFacing;
  if (cut_face) n = vec3(-1.0, 0.0, 0.0);
  else if (!gl_FrontFacing) n = -n;
  vec3 base = pow(tint.rgb, vec3(2.2));
  float shine = 0.25, sharp = 22.0;
  if (cut_face) { base = base * (0.85 + 0.5 * grain(place.yz * vec2(0.05, 0.09))) + 0.03; shine = 0.0; }
  else if (kind < 0.5) base = wood(place, base, shine);
  else if (kind < 1.5) { base *= 0.92 + 0.16 * grain(place.xy * 0.6 + place.z); shine = 0.30; sharp = 14.0; }
  else if (kind < 2.5) { base = mother_of_shell(place, base, dot(n, v)); shine = 0.55; sharp = 50.0; }
  else if (kind < 3.5) { base *= 0.93 + 0.1 * grain(place.xy * vec2(0.02, 0.4)); shine = 0.3; sharp = 30.0; }
  else if (kind < 4.5) { shine = 0.9; sharp = 60.0; }
  float light = max(dot(n, normalize(vec3(-0.35, -0.5, 0.8))), 0.0);
  float ambient = 0.42 + 0.26 * n.z + 0.10 * dot(n, v);
  if (shade == 1) {
    float t = clamp((place.z - span.x) / max(span.y - span.x, 1e-4), 0.0, 1.0);
    float line = abs(fract(place.z * 4.0 + 0.5) - 0.5) / max(fwidth(place.z * 4.0), 1e-5);
    base = mix(low_colour, high_colour, t) * mix(0.72, 1.0, smoothstep(0.4, 1.3, line));
    shine = 0.0;
  } else if (shade == 2) {
    float t = clamp(moved / max(span.y, 1e-4), -1.0, 1.0);
    base = mix(vec3(0.42), t > 0.0 ? high_colour : low_colour, abs(t));
    shine = 0.0;
  } else if (shade == 3) {
    base = mix(low_colour, high_colour, clamp((moved - span.x) / max(span.y - span.x, 1e-4), 0.0, 1.0));
    shine = 0.0;
  }
  vec3 h = normalize(v + normalize(vec3(-0.35, -0.5, 0.8)));
  vec3 lit = base * (ambient + 0.85 * light) + shine * 0.35 * pow(max(dot(n, h), 0.0), sharp);
  if (kind > 3.5 && kind < 4.5 && shade == 0) {
    vec3 r = reflect(-v, n);
    lit = base * (0.25 + 1.15 * sky(r)) + 0.25 * pow(max(dot(n, h), 0.0), sharp);
  }
  colour = vec4(dithered(pow(clamp(shouldered(lit), 0.0, 1.0), vec3(1.0 / 2.2))), tint.a * opacity);
}
)";
}

std::string lines_vertex() {
  return R"(#version 330 core
layout(location = 0) in vec3 position;
uniform mat4 view;
uniform float cut;
out float gl_ClipDistance[1];
void main() {
  gl_ClipDistance[0] = position.x - cut;
  gl_Position = view * vec4(position, 1.0);
}
)";
}

std::string lines_fragment() {
  return R"(#version 330 core
uniform vec4 ink;
out vec4 colour;
void main() { colour = ink; }
)";
}

std::string bench_vertex() {
  return R"(#version 330 core
layout(location = 0) in vec3 position;
uniform mat4 view;
out vec2 place;
void main() {
  place = position.xy;
  gl_Position = view * vec4(position, 1.0);
}
)";
}

std::string bench_fragment(bool quick) {
  return std::string("#version 330 core\n") + (quick ? "#define QUICK\n" : "") + common + R"(
in vec2 place;
uniform vec4 sides[4];      // outward normal and offset of the shadow's four sides
uniform vec3 bench_colour;
uniform vec3 far_colour;
uniform vec2 middle;
uniform float reach;
uniform float shadow;
out vec4 colour;
float outside(vec2 p) {
  float d = -1e9;
  for (int i = 0; i < 4; ++i) d = max(d, dot(sides[i].xy, p) - sides[i].z);
  return d;
}
void main() {
#ifdef QUICK
  float d = outside(place - vec2(2.0, 3.0));
  float dark = shadow * (0.8 * clamp((16.0 - d) / 22.0, 0.0, 1.0) + 0.2 * clamp((90.0 - d) / 110.0, 0.0, 1.0));
  float off = clamp(length(place - middle) / (0.5 * reach) - 1.0, 0.0, 1.0);
  colour = vec4(mix(bench_colour, far_colour, off) * (1.0 - dark), 1.0);
#else
  float thrown = 1.0 - smoothstep(-6.0, 16.0, outside(place - vec2(3.0, 5.0)));
  float near = 1.0 - smoothstep(-1.0, 4.0, outside(place));
  float wide = 1.0 - smoothstep(-20.0, 90.0, outside(place));
  float dark = shadow * (0.55 * thrown + 0.25 * near + 0.20 * wide);
  vec3 top = bench_colour * (0.985 + 0.03 * grain(place * vec2(0.002, 0.03)));
  vec3 c = mix(top, far_colour, smoothstep(0.5 * reach, reach, length(place - middle)));
  colour = vec4(dithered(c * (1.0 - dark)), 1.0);
#endif
}
)";
}

}  // namespace sagitta::viewer
