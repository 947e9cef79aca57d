"""Runs OpenColorIO (Debian: python3-pyopencolorio) for common-lut-format.peer.ts.

One JSON object on standard input, one on standard output:
{"apply": FILE, "colours": [[r, g, b], ...]}  ->  {"colours": [...]}: what the LUT file makes of the colours
{"write": FILE, "colours": [...]}             ->  the same, of a list of process nodes that is written to FILE first
"""

import json
import sys

import PyOpenColorIO as ocio


def applied(config, transform, colours):
    # without optimisation, so that no node is merged or approximated
    processor = config.getProcessor(transform).getOptimizedCPUProcessor(ocio.OPTIMIZATION_NONE)
    return [processor.applyRGB(colour) for colour in colours]


def some_nodes():
    """A matrix, a clamp, a curve, a camera logarithm and a 3D table, each with a shape of its own."""
    matrix = ocio.MatrixTransform(
        matrix=[0.7, 0.2, 0.1, 0, 0.05, 0.9, 0.05, 0, 0.1, 0.1, 0.75, 0, 0, 0, 0, 1], offset=[0.01, 0.02, -0.01, 0]
    )
    span = ocio.RangeTransform(minInValue=0.02, maxInValue=0.95, minOutValue=0, maxOutValue=1)
    curve = ocio.Lut1DTransform(length=64, inputHalfDomain=False)
    for i in range(64):
        x = i / 63
        curve.setValue(i, x**0.8, 0.9 * x, x**1.3)
    camera = ocio.LogCameraTransform(linSideBreak=[0.01] * 3, base=10)
    camera.setLogSideSlopeValue([0.25] * 3)
    camera.setLogSideOffsetValue([0.4] * 3)
    camera.setLinSideSlopeValue([5.5] * 3)
    camera.setLinSideOffsetValue([0.05] * 3)
    table = ocio.Lut3DTransform(gridSize=7)
    table.setInterpolation(ocio.INTERP_TETRAHEDRAL)
    for r in range(7):
        for g in range(7):
            for b in range(7):
                x, y, z = r / 6, g / 6, b / 6
                table.setValue(r, g, b, 0.9 * x * x + 0.1 * z, 0.8 * y + 0.2 * x * z, z**1.2 * 0.7 + 0.1 * x)
    return ocio.GroupTransform([matrix, span, curve, camera, table])


def main():
    asked = json.load(sys.stdin)
    config = ocio.Config.CreateRaw()
    if "write" in asked:
        transform = some_nodes()
        with open(asked["write"], "w", encoding="utf-8") as file:
            file.write(transform.write("Academy/ASC Common LUT Format", config))
    else:
        transform = ocio.FileTransform(asked["apply"], interpolation=ocio.INTERP_TETRAHEDRAL)
    json.dump({"version": ocio.__version__, "colours": applied(config, transform, asked["colours"])}, sys.stdout)


main()
