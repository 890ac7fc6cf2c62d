"""Reads a Strapline register map with pymodbus and prints what it understood, one item a line.

Usage: python3 read_map.py PORT BLOCK ORDER
ORDER is ABCD, CDAB, BADC or DCBA. Addresses are PDU addresses, counted from 0.
"""

import sys

from pymodbus.client import ModbusTcpClient
from pymodbus.constants import Endian
from pymodbus.payload import BinaryPayloadDecoder

# pymodbus names the order of the bytes in a register and the order of the registers.
ORDERS = {
    "ABCD": (Endian.Big, Endian.Big),
    "CDAB": (Endian.Big, Endian.Little),
    "BADC": (Endian.Little, Endian.Big),
    "DCBA": (Endian.Little, Endian.Little),
}


def words(result):
    if result.isError():
        raise SystemExit(f"refused: {result}")
    return result.registers


def decoder(registers, order):
    byte_order, word_order = ORDERS[order]
    return BinaryPayloadDecoder.fromRegisters(
        registers, byteorder=byte_order, wordorder=word_order
    )


def main():
    port, block, order = int(sys.argv[1]), int(sys.argv[2]), sys.argv[3]
    client = ModbusTcpClient("127.0.0.1", port=port)
    if not client.connect():
        raise SystemExit("no connection")
    plant = words(client.read_holding_registers(0, 100, slave=1))
    point = words(client.read_input_registers(100 * block, 100, slave=255))
    print("magic", plant[0])
    print("int16", decoder(plant[2:3], "ABCD").decode_16bit_int())
    print("float", decoder(plant[4:6], order).decode_32bit_float())
    print("int32", decoder(plant[6:8], order).decode_32bit_int())
    for index, name in enumerate(("ABCD", "CDAB", "BADC", "DCBA")):
        at = 8 + 2 * index
        print("float" + name, decoder(plant[at : at + 2], name).decode_32bit_float())
        at = 16 + 2 * index
        print("int32" + name, decoder(plant[at : at + 2], name).decode_32bit_int())
    print("quality", point[4])
    print("level", decoder(point[34:36], order).decode_32bit_float())
    print("volume", decoder(point[38:40], order).decode_32bit_float())
    print("mass", decoder(point[42:44], order).decode_32bit_float())
    print("levelMm", decoder(point[52:54], order).decode_32bit_int())
    print("levelShort", decoder(point[64:65], "ABCD").decode_16bit_int())
    print("level64", decoder(point[78:82], order).decode_64bit_float())
    print("sourceTime", decoder(point[14:16], order).decode_32bit_uint())
    bits = client.read_discrete_inputs(100 * block, 20, slave=0).bits[:20]
    print("bits", "".join("1" if bit else "0" for bit in bits))
    coils = client.read_coils(100 * block, 20, slave=1).bits[:20]
    print("coils", "".join("1" if bit else "0" for bit in coils))
    client.close()


main()
