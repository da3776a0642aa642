"""How the ear is trained; train.py is its command line."""
