#pragma once

/// The OpenGL 3.3 core functions that the viewer calls, fetched by name when a context is made. No loader library.

#include <GL/glcorearb.h>

#include <string>

/// name, type of the function pointer.
#define SAGITTA_GL_FUNCTIONS(X)                                     \
  X(ActiveTexture, ACTIVETEXTURE)                                   \
  X(AttachShader, ATTACHSHADER)                                     \
  X(BindBuffer, BINDBUFFER)                                         \
  X(BindFramebuffer, BINDFRAMEBUFFER)                               \
  X(BindRenderbuffer, BINDRENDERBUFFER)                             \
  X(BindTexture, BINDTEXTURE)                                       \
  X(BindVertexArray, BINDVERTEXARRAY)                               \
  X(BlendFunc, BLENDFUNC)                                           \
  X(BlitFramebuffer, BLITFRAMEBUFFER)                               \
  X(BufferData, BUFFERDATA)                                         \
  X(CheckFramebufferStatus, CHECKFRAMEBUFFERSTATUS)                 \
  X(Clear, CLEAR)                                                   \
  X(ClearColor, CLEARCOLOR)                                         \
  X(CompileShader, COMPILESHADER)                                   \
  X(CreateProgram, CREATEPROGRAM)                                   \
  X(CreateShader, CREATESHADER)                                     \
  X(DeleteBuffers, DELETEBUFFERS)                                   \
  X(DeleteFramebuffers, DELETEFRAMEBUFFERS)                         \
  X(DeleteProgram, DELETEPROGRAM)                                   \
  X(DeleteRenderbuffers, DELETERENDERBUFFERS)                       \
  X(DeleteShader, DELETESHADER)                                     \
  X(DeleteTextures, DELETETEXTURES)                                 \
  X(DeleteVertexArrays, DELETEVERTEXARRAYS)                         \
  X(DepthFunc, DEPTHFUNC)                                           \
  X(DepthMask, DEPTHMASK)                                           \
  X(Disable, DISABLE)                                               \
  X(DrawArrays, DRAWARRAYS)                                         \
  X(DrawElements, DRAWELEMENTS)                                     \
  X(Enable, ENABLE)                                                 \
  X(EnableVertexAttribArray, ENABLEVERTEXATTRIBARRAY)               \
  X(Finish, FINISH)                                                 \
  X(FramebufferRenderbuffer, FRAMEBUFFERRENDERBUFFER)               \
  X(FramebufferTexture2D, FRAMEBUFFERTEXTURE2D)                     \
  X(GenBuffers, GENBUFFERS)                                         \
  X(GenFramebuffers, GENFRAMEBUFFERS)                               \
  X(GenRenderbuffers, GENRENDERBUFFERS)                             \
  X(GenTextures, GENTEXTURES)                                       \
  X(GenVertexArrays, GENVERTEXARRAYS)                               \
  X(GenerateMipmap, GENERATEMIPMAP)                                 \
  X(GetError, GETERROR)                                             \
  X(GetIntegerv, GETINTEGERV)                                       \
  X(GetProgramInfoLog, GETPROGRAMINFOLOG)                           \
  X(GetProgramiv, GETPROGRAMIV)                                     \
  X(GetShaderInfoLog, GETSHADERINFOLOG)                             \
  X(GetShaderiv, GETSHADERIV)                                       \
  X(GetString, GETSTRING)                                           \
  X(GetUniformLocation, GETUNIFORMLOCATION)                         \
  X(LinkProgram, LINKPROGRAM)                                       \
  X(PixelStorei, PIXELSTOREI)                                       \
  X(PolygonOffset, POLYGONOFFSET)                                   \
  X(ReadPixels, READPIXELS)                                         \
  X(RenderbufferStorage, RENDERBUFFERSTORAGE)                       \
  X(RenderbufferStorageMultisample, RENDERBUFFERSTORAGEMULTISAMPLE) \
  X(Scissor, SCISSOR)                                               \
  X(ShaderSource, SHADERSOURCE)                                     \
  X(TexImage2D, TEXIMAGE2D)                                         \
  X(TexParameteri, TEXPARAMETERI)                                   \
  X(Uniform1f, UNIFORM1F)                                           \
  X(Uniform1i, UNIFORM1I)                                           \
  X(Uniform2f, UNIFORM2F)                                           \
  X(Uniform3f, UNIFORM3F)                                           \
  X(Uniform4f, UNIFORM4F)                                           \
  X(UniformMatrix4fv, UNIFORMMATRIX4FV)                             \
  X(UseProgram, USEPROGRAM)                                         \
  X(VertexAttribIPointer, VERTEXATTRIBIPOINTER)                     \
  X(VertexAttribPointer, VERTEXATTRIBPOINTER)                       \
  X(Viewport, VIEWPORT)

namespace sagitta::viewer::gl {

#define SAGITTA_GL_DECLARE(NAME, TYPE) extern PFNGL##TYPE##PROC NAME;
SAGITTA_GL_FUNCTIONS(SAGITTA_GL_DECLARE)
#undef SAGITTA_GL_DECLARE

using Address = void (*)();
/// Fetches every function for the current context. Returns the name of the first that is missing, or "".
std::string load(Address (*address)(const char* name));

/// Fetches and switches on the debug output of a debug context; messages of type error are counted. No effect where
/// the context has no debug output.
void watch_errors(Address (*address)(const char* name));
/// Errors reported so far by the debug output and by glGetError.
int errors();
/// What the debug output said of the last one.
const std::string& latest_error();

/// Asks the driver whether the context is still whole; fetched by load() where there is such a question.
extern PFNGLGETGRAPHICSRESETSTATUSPROC ResetStatus;
/// The driver was reset and everything on the graphics card is gone.
bool lost();
/// True when drawing is done by the processor: the picture is then kept cheaper while hands are moving.
bool software_rendering();

}  // namespace sagitta::viewer::gl
