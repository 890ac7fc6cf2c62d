"""Several Modbus units on one line with serial frames.

Usage: python3 line_units.py serial PORT UNIT [UNIT ...]
       python3 line_units.py tcp PORT UNIT [UNIT ...]
Input register A of unit U holds 1000 * U + A, for A from 0 to 99; nothing else is there. Other units
are not answered.
"""

import sys

from pymodbus.datastore import (
    ModbusSequentialDataBlock,
    ModbusServerContext,
    ModbusSlaveContext,
)
from pymodbus.server import StartSerialServer, StartTcpServer
from pymodbus.transaction import ModbusRtuFramer


def unit(number):
    block = ModbusSequentialDataBlock(0, [1000 * number + a for a in range(100)])
    return ModbusSlaveContext(ir=block, zero_mode=True)


def main():
    units = {int(text): unit(int(text)) for text in sys.argv[3:]}
    context = ModbusServerContext(slaves=units, single=False)
    if sys.argv[1] == "serial":
        StartSerialServer(
            context=context,
            framer=ModbusRtuFramer,
            port=sys.argv[2],
            baudrate=19200,
            ignore_missing_slaves=True,
        )
    else:
        StartTcpServer(
            context=context,
            framer=ModbusRtuFramer,
            address=("127.0.0.1", int(sys.argv[2])),
            allow_reuse_address=True,
            ignore_missing_slaves=True,
        )


main()
