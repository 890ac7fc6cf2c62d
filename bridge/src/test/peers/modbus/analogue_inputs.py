"""An analogue input module on Modbus TCP: raw counts in its input and holding registers.

Usage: python3 analogue_inputs.py PORT COUNT [COUNT ...]
The counts lie at PDU addresses 0, 1, 2 and so on of unit 1; nothing else is there.
"""

import sys

from pymodbus.datastore import (
    ModbusSequentialDataBlock,
    ModbusServerContext,
    ModbusSlaveContext,
)
from pymodbus.server import StartTcpServer


def main():
    port = int(sys.argv[1])
    counts = [int(text) & 0xFFFF for text in sys.argv[2:]]
    unit = ModbusSlaveContext(
        ir=ModbusSequentialDataBlock(0, counts),
        hr=ModbusSequentialDataBlock(0, counts),
        zero_mode=True,
    )
    context = ModbusServerContext(slaves={1: unit}, single=False)
    StartTcpServer(context=context, address=("127.0.0.1", port), allow_reuse_address=True)


main()
