import { fragmentShader, vertexShader } from './shaders.js';

function compile(gl: WebGL2RenderingContext, kind: number, source: string): WebGLShader {
  const shader = gl.createShader(kind)!;
  gl.shaderSource(shader, source);
  gl.compileShader(shader);
  if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS) && !gl.isContextLost())
    throw new Error(`shader: ${gl.getShaderInfoLog(shader) ?? ''}`);
  return shader;
}

/** The picture's program, and the places of its uniforms by name. */
export function pictureProgram(gl: WebGL2RenderingContext) {
  const program = gl.createProgram();
  gl.attachShader(program, compile(gl, gl.VERTEX_SHADER, vertexShader));
  gl.attachShader(program, compile(gl, gl.FRAGMENT_SHADER, fragmentShader));
  gl.linkProgram(program);
  if (!gl.getProgramParameter(program, gl.LINK_STATUS) && !gl.isContextLost())
    throw new Error(`shader: ${gl.getProgramInfoLog(program) ?? ''}`);
  const places = new Map<string, WebGLUniformLocation | null>();
  const place = (name: string): WebGLUniformLocation | null => {
    if (!places.has(name)) places.set(name, gl.getUniformLocation(program, name));
    return places.get(name) ?? null;
  };
  return { program, place };
}

/** A texture that is read without filtering. */
export function plainTexture(gl: WebGL2RenderingContext, target: number): WebGLTexture {
  const texture = gl.createTexture();
  gl.bindTexture(target, texture);
  gl.texParameteri(target, gl.TEXTURE_MIN_FILTER, gl.NEAREST);
  gl.texParameteri(target, gl.TEXTURE_MAG_FILTER, gl.NEAREST);
  gl.texParameteri(target, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
  gl.texParameteri(target, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
  return texture;
}
