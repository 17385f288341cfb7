import { type CSSProperties, useEffect, useState } from 'react';
import type { PlanPicture } from '../../store/plan-pictures';

interface PictureImageProps {
  picture: PlanPicture;
  alt: string;
  style?: CSSProperties;
}

/** A kept picture, by an address of this page that is given back when it is no longer shown. */
export function PictureImage({ picture, alt, style }: PictureImageProps) {
  const [address, setAddress] = useState<string>();
  const { bytes } = picture;
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([bytes], { type: 'image/jpeg' }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [bytes]);
  return (
    <img src={address} alt={alt} width={picture.width} height={picture.height} style={style} />
  );
}
