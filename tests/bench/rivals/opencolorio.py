"""Processor seconds of OpenColorIO on one core, as JSON.

opencolorio.py about                               its version, and whether it can take pictures, which needs numpy
opencolorio.py load LUT RUNS                       one load, nothing kept from the load before
opencolorio.py apply LUT FRAME WIDTH HEIGHT RUNS   one frame of raw r g b, 8 or 16 bit by the file's size
"""

import json
import sys
import time
from importlib.util import find_spec

import PyOpenColorIO as ocio


def processor(lut):
    ocio.ClearAllCaches()
    transform = ocio.FileTransform(lut, interpolation=ocio.INTERP_TETRAHEDRAL)
    return ocio.Config.CreateRaw().getProcessor(transform)


def timed(work, runs):
    times = []
    for _ in range(runs):
        start = time.process_time()
        work()
        times.append(time.process_time() - start)
    return times


def apply(lut, frame, width, height, runs):
    with open(frame, 'rb') as file:
        source = bytearray(file.read())
    size = len(source) // (width * height * 3)
    depth = ocio.BIT_DEPTH_UINT8 if size == 1 else ocio.BIT_DEPTH_UINT16
    target = bytearray(len(source))
    layout = (width, height, 3, depth, size, 3 * size, 3 * size * width)
    # The binding wants the buffer's items to be as wide as a code.
    item = 'B' if size == 1 else 'H'
    pictures = [ocio.PackedImageDesc(memoryview(data).cast(item), *layout) for data in (source, target)]
    through = processor(lut).getOptimizedCPUProcessor(depth, depth, ocio.OPTIMIZATION_DEFAULT)
    return timed(lambda: through.apply(*pictures), runs)


command, rest = sys.argv[1], sys.argv[2:]
if command == 'about':
    print(json.dumps({'version': ocio.__version__, 'pictures': find_spec('numpy') is not None}))
elif command == 'load':
    print(json.dumps(timed(lambda: processor(rest[0]), int(rest[1]))))
else:
    print(json.dumps(apply(rest[0], rest[1], *map(int, rest[2:]))))
